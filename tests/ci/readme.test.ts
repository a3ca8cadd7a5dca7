import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { installationFrom, solved } from '../installation/places.ts';
import { compile } from '../../src/installation/index.ts';

const top = new URL('../../', import.meta.url);
const readme = readFileSync(new URL('README.md', top), 'utf8');
const guide = readFileSync(new URL('DEVELOPERS.md', top), 'utf8');

test('the circuit typed in as an example reads, and gives the amperes that stand beside it', () => {
  const [, text = ''] = /```yaml\n([\s\S]*?)```/.exec(readme) ?? [];
  const [, amperes = ''] = /answers (\d+) A/.exec(readme) ?? [];
  const loop = solved(compile(installationFrom(text)));
  expect(Math.round(loop.amperes('line'))).toBe(Number(amperes));
});

test('every command of the guides is a script of the package, and every file they name exists', () => {
  const { scripts } = JSON.parse(readFileSync(new URL('package.json', top), 'utf8')) as { scripts: object };
  const commands = [...`${readme}${guide}`.matchAll(/(?:^|`)npm (?:run (?:-s )?)?([a-z]+)/gm)].map(([, name]) => name);
  expect(commands.length).toBeGreaterThan(8);
  for (const name of commands) expect(Object.keys(scripts)).toContain(name);
  const files = [...readme.matchAll(/(?:assets|lessons|tests)\/[\w./-]*\w/g)].map(([file]) => file);
  expect(files.length).toBeGreaterThan(8);
  for (const file of files) expect([file, existsSync(new URL(file, top))]).toEqual([file, true]);
});

test('as many published figures as it promises stand in the table, to the hundred', () => {
  const table = readFileSync(new URL('tests/reference/PUBLISHED.md', top), 'utf8');
  const [, count = ''] = /^(\d+) figures/m.exec(table) ?? [];
  const [, promised = ''] = /More than (\d+) published figures/.exec(readme) ?? [];
  expect(Number(promised)).toBe(100 * Math.floor(Number(count) / 100));
});
