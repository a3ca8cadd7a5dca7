import type { Lead, Unit } from './circuit.ts';
import type { Side } from './form.ts';

/** Distance between two wires that run side by side, units of the sheet. */
export const PITCH = 26;
/** Room between two terminals that something stands between. */
export const GAP = 20;

/** A wire where it meets a box. */
export interface Tap {
  readonly lead: Lead;
  readonly end: 0 | 1;
}

/** A line of a box: the terminals at its two ends, its height, and how many wires meet there one below another. */
export interface Row {
  readonly west: string | undefined;
  readonly east: string | undefined;
  readonly y: number;
  readonly rows: number;
}

/** Which terminals share a row: the two ends of a pole or of a two-pole part in line; all others have their own. */
export function blocksOf(
  unit: Unit,
  at: (terminal: string, side: Side) => readonly Tap[],
): readonly Pick<Row, 'west' | 'east'>[] {
  const { terminals, form, part } = unit;
  const lone = (terminal: string) => ({ west: terminal, east: terminal });
  const short = (terminal: string): string => terminal.slice((part?.length ?? -1) + 1);
  if (form === 'two-pole' && terminals.length === 2) {
    const [a = '', b = ''] = terminals;
    const only = (terminal: string, side: Side): boolean =>
      at(terminal, side === 'west' ? 'east' : 'west').length === 0;
    if (only(a, 'west') && only(b, 'east')) return [{ west: a, east: b }];
    if (only(a, 'east') && only(b, 'west')) return [{ west: b, east: a }];
    return terminals.map(lone);
  }
  if (unit.kind === 'transfer-switch' || form === 'transformer') {
    const { first, second, both } = halves(unit);
    return [
      ...Array.from({ length: Math.max(first.length, second.length) }, (_, i) => ({ west: first[i], east: second[i] })),
      ...both.map(lone),
    ];
  }
  if (form === 'through') {
    const poles = [...new Set(terminals.map((terminal) => short(terminal).replace(/\.?(supply|line|load)$/, '')))];
    return poles.map((pole) => ({
      west: terminals.find(
        (one) => /^\.?(supply|line)$/.test(short(one).slice(pole.length)) && short(one).startsWith(pole),
      ),
      east: terminals.find((one) => /^\.?load$/.test(short(one).slice(pole.length)) && short(one).startsWith(pole)),
    }));
  }
  if (form === 'source') return ordered(unit).map((east) => ({ west: undefined, east }));
  if (form === 'load')
    return terminals.map((terminal) =>
      short(terminal) === 'case' ? lone(terminal) : { west: terminal, east: undefined },
    );
  if (form === 'person') return [lone(`${part}.trunk`)];
  return terminals.map(lone);
}

function halves({ terminals, kind, part }: Unit): {
  readonly first: readonly string[];
  readonly second: readonly string[];
  readonly both: readonly string[];
} {
  const short = (terminal: string): string => terminal.slice((part?.length ?? -1) + 1);
  const lead = short(terminals[0] ?? '').split('.', 1)[0];
  const isFirst = (one: string): boolean =>
    kind === 'transfer-switch' ? !short(one).endsWith('load') : short(one).split('.', 1)[0] === lead;
  const both = terminals.filter((one) => short(one) === 'case');
  const rest = terminals.filter((one) => !both.includes(one));
  return { first: rest.filter(isFirst), second: rest.filter((one) => !isFirst(one)), both };
}

/** Lines first, then the neutral, then the frame. */
function ordered({ terminals }: Unit): readonly string[] {
  const rank = (terminal: string): number =>
    /(frame|case)$/.test(terminal) ? 2 : terminal.endsWith('neutral') ? 1 : 0;
  return terminals.toSorted((a, b) => rank(a) - rank(b));
}

/** Rows below one another, with room where something stands between them. */
export function rowsOf(
  blocks: readonly Pick<Row, 'west' | 'east'>[],
  at: (terminal: string, side: Side) => readonly Tap[],
  top: number,
  apart: number,
): readonly Row[] {
  let y = top;
  return blocks.map((block, i) => {
    const beside = [block, blocks[i + 1] ?? block].some(({ west, east }) => west === east);
    const count = (terminal: string | undefined, side: Side): number =>
      terminal === undefined ? 0 : at(terminal, side).length;
    const rows = Math.max(1, count(block.west, 'west'), count(block.east, 'east'));
    const row = { ...block, y, rows };
    y += rows * PITCH + (apart === 0 ? 0 : beside ? apart : GAP);
    return row;
  });
}
