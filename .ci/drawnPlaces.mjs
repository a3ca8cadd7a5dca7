/** Drawn places: folders `assets/places/<drawing>/` with layout.json, routes.json, wiring.json and their SVGs. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readAnchors } from './svgAnchors.mjs';

const MARK = '\0drawn-place/';
const ASSETS = fileURLToPath(new URL('../assets/', import.meta.url));

/** @typedef {import('../src/depiction/index.ts').DrawnPlace} DrawnPlace */
/** @typedef {(path: string) => string} Read */

/** The names of all drawn places. @returns {readonly string[]} */
export function drawnPlaceNames() {
  return readdirSync(join(ASSETS, 'places')).filter((name) => existsSync(join(ASSETS, 'places', name, 'layout.json')));
}

/**
 * The three files of a drawn place. A point written `"part@anchor"` becomes the point at which that anchor stands.
 * @param {string} name
 * @param {Read} [read]
 * @returns {DrawnPlace}
 * @throws {Error} naming the file and the point where a part or an anchor is not there
 */
export function readDrawnPlace(name, read = readText) {
  const file = (/** @type {string} */ kind) => JSON.parse(read(join(ASSETS, 'places', name, `${kind}.json`)));
  const layout = file('layout');
  const at = anchorsOf(layout, `places/${name}`, read);
  return {
    layout: resolved(layout, at),
    routes: resolved(file('routes'), at),
    wiring: resolved(file('wiring'), at),
  };
}

/**
 * The SVGs of a drawn place by their path under assets/, without the ending: those it names, and no others.
 * @param {DrawnPlace} place
 * @param {Read} [read]
 * @returns {Readonly<Record<string, string>>}
 */
export function sheetsOf(place, read = readText) {
  return Object.fromEntries(
    svgsIn(place).map((file) => [file.replace(/\.svg$/, ''), read(join(ASSETS, file)).replaceAll(/>\s+</g, '><')]),
  );
}

/** Every SVG that a piece of JSON names, each once. @returns {readonly string[]} */
export function svgsIn(/** @type {unknown} */ json) {
  if (typeof json === 'string') return json.endsWith('.svg') ? [json] : [];
  if (json === null || typeof json !== 'object') return [];
  return [...new Set(Object.values(json).flatMap(svgsIn))];
}

/** @returns {(point: string) => readonly number[]} */
function anchorsOf(
  /** @type {{ readonly parts: readonly { readonly id: string, readonly file: string, readonly x: number, readonly y: number }[] }} */ layout,
  /** @type {string} */ folder,
  /** @type {Read} */ read,
) {
  return (point) => {
    const [id = '', anchor = ''] = point.split('@');
    const part = layout.parts.find((one) => one.id === id);
    if (!part) throw new Error(`assets/${folder}: "${point}" names no part of layout.json`);
    const found = readAnchors(read(join(ASSETS, part.file)), `assets/${part.file}`).anchors[anchor];
    if (!found)
      throw new Error(`assets/${folder}: "${point}": draw an anchor id="at-${anchor}" in assets/${part.file}`);
    return [part.x + found.x, part.y + found.y];
  };
}

/**
 * @template Json
 * @returns {Json}
 */
function resolved(/** @type {Json} */ json, /** @type {(point: string) => readonly number[]} */ at) {
  /** @type {(value: unknown) => unknown} */
  const walk = (value) => {
    if (typeof value === 'string') return /^[^@]+@[^@]+$/.test(value) ? at(value) : value;
    if (Array.isArray(value)) return value.map(walk);
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, walk(inner)]));
  };
  return /** @type {Json} */ (walk(json));
}

function readText(/** @type {string} */ path) {
  return readFileSync(path, 'utf8');
}

/**
 * `import place from './layout.json?drawn'`: the three files of the place in that folder, and `?sheets`: its SVGs, both as
 * one module, so that a place is fetched in two pieces that hold nothing of another place.
 * @returns {import('vite').Plugin}
 */
export function drawnPlaces() {
  return {
    name: 'drawn-places',
    enforce: 'pre',
    // An id of its own, without an ending: Vite would read anything that ends in .json by itself.
    async resolveId(source, importer) {
      const [file = '', kind] = source.split('?');
      if (basename(file) !== 'layout.json' || (kind !== 'drawn' && kind !== 'sheets')) return undefined;
      const found = await this.resolve(file, importer, { skipSelf: true });
      return found && `${MARK}${kind}/${basename(dirname(found.id))}`;
    },
    load(id) {
      if (!id.startsWith(MARK)) return undefined;
      const [kind, name = ''] = id.slice(MARK.length).split('/');
      const read = (/** @type {string} */ path) => {
        this.addWatchFile(path);
        return readText(path);
      };
      const place = readDrawnPlace(name, read);
      const json = JSON.stringify(kind === 'drawn' ? place : sheetsOf(place, read));
      return `export default JSON.parse(${JSON.stringify(json)});\n`;
    },
  };
}
