/** An installation while it is being written by chance, in the words of its file. */
import { chance } from '../../scenario/anyCase.ts';

/** Numbers by chance, the same for the same seed. */
export interface Draw {
  /** From 0 up to 1. */
  next(): number;
  /** Between two numbers above zero, as likely in each decade. */
  between(low: number, high: number): number;
  /** A whole number, both ends included. */
  whole(low: number, high: number): number;
  /** True in this share of all cases. */
  likely(share: number): boolean;
  oneOf<T>(list: readonly T[]): T;
}

/** What feeds what comes next: conductors by their terminals. `earth` is whatever the cases behind are to be joined to. */
export interface Bars {
  readonly lines: readonly string[];
  readonly neutral?: string;
  readonly earth?: string;
}

/** The file as it grows. */
export interface Writing {
  readonly draw: Draw;
  readonly region: 'north-america' | 'iec';
  readonly direct: boolean;
  /** Whether values may be silly: no resistance at all, or as good as none to carry anything. */
  readonly wild: boolean;
  readonly parts: Record<string, object>;
  readonly conditions: Record<string, object>;
  readonly joins: object[];
  /** Terminals that may be touched, or touch one another by a fault. */
  readonly metal: string[];
  /** Where one may stand on soil, a foot each. */
  readonly places: string[];
  /** Branches that may be open or loose. */
  readonly conductors: string[];
  /** What the supply is and how it is earthed, for counting. */
  readonly told: string[];
  join(one: string, other: string): void;
  /** A resistance, Ω; of a wild file sometimes none, or next to infinite. */
  ohm(low: number, high: number): number;
}

/** What is kept to, whatever is drawn. */
export interface Kept {
  /** With silly values too, such as joints without resistance and cables of ten kilometres. */
  readonly wild: boolean;
  /** Direct current only; otherwise it is rare. */
  readonly direct: boolean;
}

/** Begins a file. */
export function writing(seed: number, { wild = false, direct = false }: Partial<Kept>): Writing {
  const next = chance(seed);
  const draw: Draw = {
    next,
    between: (low, high) => low * (high / low) ** next(),
    whole: (low, high) => low + Math.floor(next() * (high - low + 1)),
    likely: (share) => next() < share,
    oneOf: (list) => {
      const one = list[Math.floor(next() * list.length)];
      if (one === undefined) throw new RangeError('oneOf: there is nothing to choose from');
      return one;
    },
  };
  const joins: object[] = [];
  const joined = new Set<string>();
  return {
    draw,
    region: draw.oneOf(['north-america', 'iec']),
    direct: draw.likely(0.04) || direct,
    wild,
    parts: {},
    conditions: {},
    joins,
    metal: [],
    places: [],
    conductors: [],
    told: [],
    join(one, other) {
      const pair = [one, other].toSorted().join(' to ');
      if (one === other || joined.has(pair)) return;
      joined.add(pair);
      const resistance_ohm = draw.between(1e-4, 0.05);
      joins.push(
        draw.likely(0.8)
          ? [one, other]
          : { between: [one, other], resistance_ohm: wild && draw.likely(0.3) ? 0 : resistance_ohm },
      );
    },
    ohm(low, high) {
      if (wild && draw.likely(0.08)) return draw.oneOf([0, 1e-9, 1e-5, 1e6, 1e9, 1e10]);
      return draw.between(low, high);
    },
  };
}
