/** Named anchors of a drawing: circles (or any shape with cx/cy or x/y) whose id begins with `at-`. */
import { readFileSync } from 'node:fs';
import { parseSync } from 'svgson';

/** @typedef {{ readonly x: number, readonly y: number }} Point */
/** @typedef {{ readonly x: number, readonly y: number, readonly width: number, readonly height: number }} Box */

const SUFFIX = '.svg?anchors';

/**
 * Reads the view box and the anchors of an SVG, in units of its view box. Only `translate()` may stand above an anchor.
 * @param {string} svg
 * @param {string} file named in the errors
 * @returns {{ readonly viewBox: Box, readonly anchors: Readonly<Record<string, Point>> }}
 * @throws {Error} without a view box, with two anchors of one name, an anchor without a number, or under another transform
 */
export function readAnchors(svg, file) {
  const root = parseSync(svg);
  const [x, y, width, height] = (root.attributes['viewBox'] ?? '').split(/[\s,]+/).map(Number);
  if (x === undefined || y === undefined || !width || !height || Number.isNaN(x + y + width + height))
    throw new Error(`${file}: write viewBox="x y width height" on the svg element`);
  /** @type {Record<string, Point>} */
  const anchors = {};

  /** @returns {void} */
  function walk(/** @type {import('svgson').INode} */ node, /** @type {Point | undefined} */ origin) {
    const { id, transform, ...place } = node.attributes;
    const here = origin && shifted(origin, transform);
    if (id?.startsWith('at-')) {
      const name = id.slice(3);
      if (!here) throw new Error(`${file}: only translate() may stand above the anchor ${id}`);
      if (name in anchors) throw new Error(`${file}: the anchor ${id} stands twice`);
      const point = {
        x: here.x + Number(place['cx'] ?? place['x'] ?? 0),
        y: here.y + Number(place['cy'] ?? place['y'] ?? 0),
      };
      if (Number.isNaN(point.x + point.y))
        throw new Error(`${file}: the anchor ${id} needs plain numbers for its place`);
      anchors[name] = point;
    }
    for (const child of node.children) walk(child, here);
  }
  walk(root, { x: 0, y: 0 });
  return { viewBox: { x, y, width, height }, anchors };
}

/** @returns {Point | undefined} undefined where the transform is not a single translate() */
function shifted(/** @type {Point} */ origin, /** @type {string | undefined} */ transform) {
  if (!transform) return origin;
  const found = /^\s*translate\(\s*([-+\d.e]+)(?:[\s,]+([-+\d.e]+))?\s*\)\s*$/.exec(transform);
  return found ? { x: origin.x + Number(found[1]), y: origin.y + Number(found[2] ?? 0) } : undefined;
}

/**
 * `import { anchors, viewBox } from './part.svg?anchors'`, read when building.
 * @returns {import('vite').Plugin}
 */
export function svgAnchors() {
  return {
    name: 'svg-anchors',
    enforce: 'pre',
    load(id) {
      if (!id.endsWith(SUFFIX)) return undefined;
      const file = id.slice(0, -'?anchors'.length);
      this.addWatchFile(file);
      const { viewBox, anchors } = readAnchors(readFileSync(file, 'utf8'), file);
      return `export const viewBox = ${JSON.stringify(viewBox)};\nexport const anchors = ${JSON.stringify(anchors)};\n`;
    },
  };
}
