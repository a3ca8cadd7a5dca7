/** Installations and lessons that ship with the app, read, checked and proven by the project's own readers while building. */
import { readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';
import { parse } from 'yaml';
import { svgAnchors } from './svgAnchors.mjs';

const top = fileURLToPath(new URL('..', import.meta.url));

/**
 * `import { installation } from './x.yaml?place'`, `import { title } from './x.yaml?title'` and `import { lesson } from './x/lesson.yaml?lesson'`: the file as data,
 * so that the page needs no reader for it. A file in which anything is wrong, and a lesson that teaches what the solver
 * refutes, fails the build with every error and its caret.
 * @returns {import('vite').Plugin}
 */
export function bundled() {
  return {
    name: 'bundled',
    enforce: 'pre',
    async load(id) {
      const [file = '', kind] = id.split('?');
      if (!file.endsWith('.yaml') || (kind !== 'place' && kind !== 'title' && kind !== 'lesson')) return undefined;
      /** @type {(path: string) => string} */
      const read = (path) => {
        this.addWatchFile(path);
        return readFileSync(path, 'utf8');
      };
      try {
        if (kind === 'title') return asModule('title', parse(read(file)).place);
        return kind === 'place'
          ? asModule('installation', await readPlace(file, read))
          : asModule('lesson', await readLesson(file, read));
      } catch (error) {
        return this.error(error instanceof Error ? error.message : String(error));
      }
    },
  };
}

/** @typedef {(path: string) => string} Read */

async function readPlace(/** @type {string} */ file, /** @type {Read} */ read) {
  const { printDiagnostics, readInstallation } = await room('installation');
  const text = read(file);
  const reading = readInstallation(text, relative(top, file));
  if (!reading.ok) throw new Error(`\n${printDiagnostics(reading.diagnostics, text)}`);
  return reading.installation;
}

async function readLesson(/** @type {string} */ file, /** @type {Read} */ read) {
  const [{ compile, printDiagnostics }, lessons] = await Promise.all([room('installation'), room('lesson')]);
  const text = read(file);
  const folder = dirname(file);
  const place = lessons.placeNamed(text) ?? '';
  const build = compile(await readPlace(join(top, 'lessons/places', `${place}.yaml`), read));
  const prose = Object.fromEntries(
    readdirSync(folder)
      .filter((name) => name.endsWith('.md'))
      .map((name) => [name, read(join(folder, name))]),
  );
  const reading = lessons.readLesson(text, relative(top, file), { id: basename(folder), place, build, prose });
  if (!reading.ok) throw new Error(`\n${printDiagnostics(reading.diagnostics, text)}`);
  const refuted = lessons.prove(reading.lesson, build).filter(({ holds }) => !holds);
  if (refuted.length > 0)
    throw new Error(
      `\n${refuted.map(({ at, value }) => `${relative(top, file)}: ${at} is refuted: ${value}`).join('\n')}`,
    );
  return reading.lesson;
}

/** @typedef {{ installation: typeof import('../src/installation/index.ts'), lesson: typeof import('../src/lesson/index.ts') }} Rooms */

/**
 * @template {keyof Rooms} Room
 * @param {Room} name
 * @returns {Promise<Rooms[Room]>}
 */
async function room(name) {
  /** @type {{ module: unknown }} */
  const { module } = await runnerImport(join(top, `src/${name}/index.ts`), {
    root: top,
    configFile: false,
    logLevel: 'error',
    plugins: [svgAnchors()],
  });
  return /** @type {Rooms[Room]} */ (module);
}

function asModule(/** @type {string} */ name, /** @type {unknown} */ value) {
  return `export const ${name} = JSON.parse(${JSON.stringify(JSON.stringify(value))});\n`;
}
