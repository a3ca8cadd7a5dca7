import { readFileSync } from 'node:fs';
import type { Build } from '../../src/installation/index.ts';
import { built, solved, type Solved } from '../installation/places.ts';

/** A textbook circuit, written as a file as it stands in the book. */
export function circuit(name: string): Build {
  return built(readFileSync(new URL(`./loops/${name}.yaml`, import.meta.url), 'utf8'));
}

/** An impedance as a book writes it. */
export interface Ohms {
  readonly r: number;
  readonly x?: number;
}

/** A source with these impedances in series, one after another, and nothing else; the first is its own. */
function series(emf_V: number, own: Ohms, ...ohms: readonly Ohms[]): Solved {
  const ends = ['supply.plus', ...ohms.slice(1).map((_, at) => `node ${'abcdefghij'[at]}`), 'supply.minus'];
  const text = [
    'place: A loop on paper',
    'region: iec',
    'parts:',
    `  supply: { kind: source, emf_V: ${emf_V}, resistance_ohm: ${own.r}, reactance_ohm: ${own.x ?? 0} }`,
    ...ohms.flatMap(({ r, x = 0 }, at) => [
      `  part ${'abcdefghij'[at]}:`,
      `    { kind: impedance, between: [${ends[at]}, ${ends[at + 1]}], resistance_ohm: ${r}, reactance_ohm: ${x} }`,
    ]),
    ...ends.slice(1, -1).map((node) => `  ${node}: { kind: fitting }`),
  ].join('\n');
  return solved(built(text));
}

/** Amperes that such a loop passes. */
export function loop_A(emf_V: number, own: Ohms, ...ohms: readonly Ohms[]): number {
  return series(emf_V, own, ...ohms).amperes('supply');
}
