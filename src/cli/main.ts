import { readdirSync, readFileSync } from 'node:fs';
import { ohmward } from './ohmward.ts';

// A reader that stops early (head, less) is no fault of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

process.exitCode = ohmward(process.argv.slice(2), {
  read: (file) => readFileSync(file, 'utf8'),
  list: (folder) => readdirSync(folder),
  print: (text) => void process.stdout.write(`${text}\n`),
  complain: (text) => void process.stderr.write(`${text}\n`),
  columns: process.stdout.columns ?? 100,
});
