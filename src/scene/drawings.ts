import palette from '../../assets/palette.json';
import type { Theme } from './scene.ts';

const FOUND = import.meta.glob<string>(['../../assets/parts/*.svg', '../../assets/places/*/*.svg'], {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** All drawings by their path under assets/, without the ending. */
const DRAWINGS: ReadonlyMap<string, string> = new Map(
  Object.entries(FOUND).map(([path, svg]) => [path.replace(/^.*\/assets\//, '').replace(/\.svg$/, ''), svg]),
);

const DARK: ReadonlyMap<string, string> = new Map(
  Object.entries(palette).map(([day, dark]) => [day.toUpperCase(), dark]),
);

/** Names of all drawings. */
export function allDrawings(): readonly string[] {
  return [...DRAWINGS.keys()];
}

/** A drawing in the colours of a theme.
 *  @throws RangeError if there is no such drawing */
export function drawing(name: string, theme: Theme): string {
  const svg = DRAWINGS.get(name);
  if (svg === undefined) throw new RangeError(`There is no drawing assets/${name}.svg`);
  return theme === 'day' ? svg : svg.replace(/#[0-9a-f]{6}\b/gi, (colour) => DARK.get(colour.toUpperCase()) ?? colour);
}

/** Size of a drawing in units of the picture, and the anchors it names. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  /** Where it turns about, if it does. */
  readonly shaft: { readonly x: number; readonly y: number } | undefined;
}

/** Reads the size of a drawing and the anchor it turns about.
 *  @throws Error naming the drawing if it has no view box */
export function frameOf(name: string): Frame {
  const svg = DRAWINGS.get(name) ?? '';
  const box = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg);
  if (!box) throw new Error(`assets/${name}.svg: write viewBox="0 0 width height" on the svg element`);
  const shaft = /id="at-shaft" cx="([\d.-]+)" cy="([\d.-]+)"/.exec(svg);
  return {
    width: Number(box[1]),
    height: Number(box[2]),
    shaft: shaft ? { x: Number(shaft[1]), y: Number(shaft[2]) } : undefined,
  };
}
