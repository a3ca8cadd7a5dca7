import { cruise, type IConfiguration, type ICruiseResult, type IViolation } from 'dependency-cruiser';
import extractTSConfig from 'dependency-cruiser/config-utl/extract-ts-config';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import configuration from '../.dependency-cruiser.js';
import { PURE, ROOMS } from '../.ci/rooms.js';

const rooms = Object.keys(ROOMS);
const libraries = [...new Set(Object.values(ROOMS).flatMap((room) => room.libraries))].filter(
  (name) => name !== 'node',
);
const { forbidden = [], options = {} }: IConfiguration = configuration;

/** What the gate sees in `src` below a folder. */
async function gate(baseDir: string): Promise<ICruiseResult> {
  const { enhancedResolveOptions, tsConfig: _file, ...rest } = options;
  const { output } = await cruise(
    ['src'],
    { ...rest, baseDir, ruleSet: { forbidden }, validate: true },
    enhancedResolveOptions,
    { tsConfig: extractTSConfig(join(import.meta.dirname, '../tsconfig.json')) },
  );
  if (typeof output === 'string') throw new TypeError('the gate answered in words');
  return output;
}

/** A throw-away tree of files. */
function plant(files: Readonly<Record<string, string>>): string {
  const top = mkdtempSync(join(tmpdir(), 'layers-'));
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(top, path)), { recursive: true });
    writeFileSync(join(top, path), text);
  }
  return top;
}

const arrow = ({ from, to }: IViolation) => `${from} → ${to}`;
const caught = (result: ICruiseResult, rule: RegExp) =>
  result.summary.violations
    .filter(({ rule: { name } }) => rule.test(name))
    .map(arrow)
    .toSorted();

describe('the tree as it stands', () => {
  const top = join(import.meta.dirname, '..');

  test('the gate sees every source file', async () => {
    const files = readdirSync(join(top, 'src'), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .map((name) => `src/${name}`);
    const seen = (await gate(top)).modules.map(({ source }) => source);
    expect(files.length).toBeGreaterThan(0);
    expect(files.filter((file) => !seen.includes(file))).toEqual([]);
  });

  test('every folder of src is a room of the table', () => {
    const folders = readdirSync(join(top, 'src'), { withFileTypes: true }).filter((entry) => entry.isDirectory());
    expect(folders.map(({ name }) => name).filter((name) => !rooms.includes(name))).toEqual([]);
  });

  test('no arrow of the table can be followed in a circle', () => {
    const reached = (from: string): readonly string[] =>
      (ROOMS[from]?.rooms ?? []).flatMap((to) => [
        to,
        ...(rooms.indexOf(to) < rooms.indexOf(from) ? reached(to) : ['?']),
      ]);
    expect(rooms.filter((room) => reached(room).includes('?'))).toEqual([]);
  });

  test('every room that may be imported by a pure room is pure', () => {
    expect(PURE.flatMap((room) => ROOMS[room]?.rooms ?? []).filter((room) => !PURE.includes(room))).toEqual([]);
  });
});

describe('a tree in which everything is planted at once', () => {
  let top = '';
  let result: ICruiseResult;

  beforeAll(async () => {
    const files: Record<string, string> = {};
    for (const library of libraries) {
      const exports = { '.': { import: './index.js' }, './part': { import: './part.js' } };
      files[`node_modules/${library}/package.json`] = JSON.stringify({ name: library, version: '1.0.0', exports });
      files[`node_modules/${library}/index.js`] = files[`node_modules/${library}/part.js`] = 'export const thing = 1;';
    }
    for (const from of rooms) {
      files[`src/${from}/index.ts`] = `export { inner } from './inner.ts';`;
      files[`src/${from}/inner.ts`] = `export const inner = '${from}';`;
      files[`src/${from}/node.ts`] = `import 'node:fs';`;
      for (const to of rooms.filter((room) => room !== from)) {
        files[`src/${from}/value-${to}.ts`] = `export { inner } from '../${to}/index.ts';`;
        files[`src/${from}/type-${to}.ts`] =
          `import type { inner } from '../${to}/index.ts'; export type T = typeof inner;`;
        files[`src/${from}/late-${to}.ts`] = `export const late = () => import('../${to}/index.ts');`;
        files[`src/${from}/door-${to}.ts`] = `export { inner } from '../${to}/inner.ts';`;
      }
      libraries.forEach((library, index) => {
        files[`src/${from}/library-${index}.ts`] = `export { thing } from '${library}';`;
        files[`src/${from}/library-type-${index}.ts`] =
          `import type { thing } from '${library}'; export type T = typeof thing;`;
        files[`src/${from}/library-part-${index}.ts`] = `export { thing } from '${library}/part';`;
      });
    }
    files['src/main.tsx'] = `import './app/index.ts'; import './electrics/index.ts'; import 'pixi.js';`;
    files['src/cellar/index.ts'] = `export const inner = 'cellar';`;
    files['src/app/cellar.ts'] = `export { inner } from '../cellar/index.ts';`;
    files['src/app/home.ts'] = `import '../main.tsx';`;
    files['src/app/alone.ts'] = `export const alone = true;`;
    files['src/app/lost.ts'] = `import './gone.ts';`;
    files['src/app/chicken.ts'] = `import './egg.ts';`;
    files['src/app/egg.ts'] = `import './chicken.ts';`;
    top = plant(files);
    result = await gate(top);
  });

  afterAll(() => rmSync(top, { recursive: true, force: true }));

  const pairs = rooms.flatMap((from) => rooms.filter((to) => to !== from).map((to) => ({ from, to })));
  const forbiddenPairs = pairs.filter(({ from, to }) => !ROOMS[from]?.rooms.includes(to));

  test('of the 210 arrows between 15 rooms exactly the forbidden ones come back, as value, type and late import', () => {
    expect(pairs).toHaveLength(210);
    const expected = forbiddenPairs.flatMap(({ from, to }) => [
      ...['value', 'type', 'late'].map((way) => `src/${from}/${way}-${to}.ts → src/${to}/index.ts`),
      `src/${from}/door-${to}.ts → src/${to}/inner.ts`,
    ]);
    const besides = ['src/app/cellar.ts → src/cellar/index.ts', 'src/app/home.ts → src/main.tsx'];
    expect(caught(result, /^room-/)).toEqual([...expected, ...besides].toSorted());
  });

  test('a room entered past its index comes back, allowed or not', () => {
    const expected = pairs.map(({ from, to }) => `src/${from}/door-${to}.ts → src/${to}/inner.ts`);
    expect(caught(result, /^door-/)).toEqual(expected.toSorted());
  });

  test('a library outside its rooms comes back, as value, type and part of a library', () => {
    const expected = rooms.flatMap((room) =>
      libraries.flatMap((library, index) =>
        ROOMS[room]?.libraries.includes(library)
          ? []
          : [
              `src/${room}/library-${index}.ts → node_modules/${library}/index.js`,
              `src/${room}/library-type-${index}.ts → node_modules/${library}/index.js`,
              `src/${room}/library-part-${index}.ts → node_modules/${library}/part.js`,
            ],
      ),
    );
    expect(caught(result, /^library-/)).toEqual(expected.toSorted());
  });

  test('node: modules come back from every room but the terminal', () => {
    const expected = rooms.filter((room) => room !== 'cli').map((room) => `src/${room}/node.ts → fs`);
    expect(caught(result, /^no-node$/)).toEqual(expected.toSorted());
  });

  test('the root, a stranger, a circle, an orphan and a missing file come back', () => {
    expect(caught(result, /^root$/)).toEqual(
      ['src/main.tsx → node_modules/pixi.js/index.js', 'src/main.tsx → src/electrics/index.ts'].toSorted(),
    );
    expect(caught(result, /^no-stranger$/)).toEqual(['src/app/cellar.ts → src/cellar/index.ts']);
    expect(caught(result, /^no-circle$/)).toContain('src/app/chicken.ts → src/app/egg.ts');
    expect(caught(result, /^no-orphan$/)).toEqual(['src/app/alone.ts → src/app/alone.ts']);
    expect(caught(result, /^unresolvable$/)).toEqual(['src/app/lost.ts → ./gone.ts']);
  });
});
