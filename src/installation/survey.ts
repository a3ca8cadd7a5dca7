import type { DiagnosticCode } from './diagnostic.ts';
import type { DocumentPath } from './documentPlaces.ts';
import type { Part } from './parts/index.ts';
import type { Region } from './plan.ts';
import type { TerminalName } from './terminal.ts';

/** Notes one fault. */
export type Say = (
  code: DiagnosticCode,
  path: DocumentPath,
  message: string,
  options?: { readonly of?: 'key' | 'value'; readonly instead?: string | undefined },
) => void;

/** What was understood of a file, piece by piece; what is broken is left out and no guess is made about it. */
export interface Survey {
  /** As written; anything else than iec reads as north-america. */
  readonly region: Region;
  readonly parts: ReadonlyMap<string, Part>;
  readonly broken: ReadonlySet<string>;
  /** Of all parts, the broken ones last. */
  readonly names: readonly string[];
  readonly terminals: readonly TerminalName[];
  /** Which terminals are joined, as pair keys. */
  readonly joins: ReadonlySet<string>;
  /** The terminals that each terminal is joined to. */
  readonly neighbours: ReadonlyMap<number, readonly number[]>;
  /** Names of everything that conducts: cores, two-terminal parts, poles. */
  readonly conductors: ReadonlySet<string>;
  /** The index of a terminal; says what is wrong with the name if there is none. */
  find(terminal: TerminalName, path: DocumentPath): number | undefined;
  readonly say: Say;
  /** The name that was probably meant; undefined also where guessing would take too long. */
  guess(written: string, names: readonly string[]): string | undefined;
}

/** A pair of terminals whatever their order. */
export function pairKey(a: number, b: number): string {
  return a < b ? `${a} ${b}` : `${b} ${a}`;
}

/** Whether two found terminals are one; says so if they are. */
export function sameTerminal(a: number | undefined, b: number | undefined, path: DocumentPath, say: Say): boolean {
  if (a === undefined || a !== b) return false;
  say('joined-to-itself', path, 'names one terminal twice', { instead: 'two different terminals' });
  return true;
}
