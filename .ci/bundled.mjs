/** Installations and lessons that ship with the app, read and checked by the project's own readers while building. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { relative } from 'node:path';
import { runnerImport } from 'vite';
import { svgAnchors } from './svgAnchors.mjs';

const top = fileURLToPath(new URL('..', import.meta.url));

/**
 * `import { installation } from './x.yaml?place'`: the file as data, so that the page needs no reader for it.
 * A file in which anything is wrong fails the build, with every error and its caret.
 * @returns {import('vite').Plugin}
 */
export function bundled() {
  return {
    name: 'bundled',
    enforce: 'pre',
    async load(id) {
      const [file = '', kind] = id.split('?');
      if (kind !== 'place' || !file.endsWith('.yaml')) return undefined;
      this.addWatchFile(file);
      const text = readFileSync(file, 'utf8');
      /** @type {{ module: typeof import('../src/installation/index.ts') }} */
      const { module } = await runnerImport(`${top}src/installation/index.ts`, {
        root: top,
        configFile: false,
        plugins: [svgAnchors()],
      });
      const read = module.readInstallation(text, relative(top, file));
      if (!read.ok) return this.error(`\n${module.printDiagnostics(read.diagnostics, text)}`);
      return `export const installation = JSON.parse(${JSON.stringify(JSON.stringify(read.installation))});\n`;
    },
  };
}
