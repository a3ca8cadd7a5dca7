import palette from '../../assets/palette.json';
import type { Theme } from './scene.ts';

const DARK: ReadonlyMap<string, string> = new Map(
  Object.entries(palette).map(([day, dark]) => [day.toUpperCase(), dark]),
);

/** Size of a drawing in units of the picture, and the anchors it names. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  /** Where it turns about, if it does. */
  readonly shaft: { readonly x: number; readonly y: number } | undefined;
}

/** The drawings of a place by their path under assets/, without the ending. */
export interface Drawings {
  readonly names: readonly string[];
  /** A drawing in the colours of a theme. @throws RangeError if there is no such drawing */
  drawing(name: string, theme: Theme): string;
  /** The size of a drawing and the anchor it turns about. @throws Error naming the drawing if it has no view box */
  frameOf(name: string): Frame;
}

/** Opens drawings given as the text of their SVGs. */
export function openDrawings(svgs: Readonly<Record<string, string>>): Drawings {
  return {
    names: Object.keys(svgs),
    drawing(name, theme) {
      const svg = svgs[name];
      if (svg === undefined) throw new RangeError(`There is no drawing assets/${name}.svg`);
      return theme === 'day' ? svg : inDark(svg);
    },
    frameOf: (name) => readFrame(svgs[name] ?? '', name),
  };
}

/** A drawing's text with every colour of the palette exchanged for its counterpart in the dark. */
function inDark(svg: string): string {
  return svg.replace(/#[0-9a-f]{6}\b/gi, (colour) => DARK.get(colour.toUpperCase()) ?? colour);
}

function readFrame(svg: string, name: string): Frame {
  const box = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg);
  if (!box) throw new Error(`assets/${name}.svg: write viewBox="0 0 width height" on the svg element`);
  const shaft = /id="at-shaft" cx="([\d.-]+)" cy="([\d.-]+)"/.exec(svg);
  return {
    width: Number(box[1]),
    height: Number(box[2]),
    shaft: shaft ? { x: Number(shaft[1]), y: Number(shaft[2]) } : undefined,
  };
}
