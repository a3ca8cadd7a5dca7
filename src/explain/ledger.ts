import type { WayKind } from './finding.ts';

/** One road home to the winding: the paths that share what distinguishes them, worded. */
export interface WayHome {
  /** stable across runs of one installation: the parts that distinguish this way, joined by "+" */
  readonly name: string;
  readonly kind: WayKind;
  /** part names in order, from where the current leaves the line to the winding */
  readonly via: readonly string[];
  /** r.m.s., the part in phase with the whole; never negative */
  readonly amperes: number;
  /** indexes into the network's branches that this way uses, in order of the largest path, then the others */
  readonly branches: readonly number[];
  /** what this way is called, e.g. "Third wire" */
  readonly text: string;
  /** stations in words, e.g. case, outlet, panel, bonding jumper, neutral, winding */
  readonly hops: readonly string[];
}

/** How one current divides on its way home; the ways' amperes sum to the total within 1e-9 of it. */
export interface Ledger {
  readonly of: 'fault' | 'load';
  readonly total_A: number;
  readonly ways: readonly WayHome[];
  /** current that goes in circles between sources or loads without coming home, cancelled before dividing */
  readonly circulating_A: number;
}
