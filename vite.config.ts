import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: 'src',
  base: './',
  plugins: [react()],
  build: { outDir: '../dist/app', emptyOutDir: true, target: 'es2022' },
  test: { root: '.', include: ['tests/**/*.test.ts'] },
});
