import type { Bars, Writing } from './writing.ts';

/** What drives a supply: its lines, the point that may be earthed and is the neutral if there is one, its frame if it has one. */
export interface Offered extends Bars {
  readonly frame?: string;
}

type Source = (writing: Writing, name: string) => Offered;

const LINES = ['a', 'b', 'c'] as const;

function nameplate({ draw, wild }: Writing): object {
  switch (draw.whole(0, 2)) {
    case 0:
      return { impedance_percent: draw.between(0.5, 8), x_over_r: draw.likely(0.1) ? 0 : draw.between(0.1, 20) };
    case 1:
      return { resistance_percent: draw.between(0.3, 5), reactance_percent: draw.between(0.3, 8) };
    default:
      return {
        resistance_ohm: wild && draw.likely(0.2) ? 0 : draw.between(1e-3, 0.5),
        reactance_ohm: draw.between(1e-3, 0.5),
      };
  }
}

const threePhase =
  (connection: 'wye' | 'delta' | 'high-leg-delta', secondary_V: number): Source =>
  (writing, name) => {
    const { draw, parts } = writing;
    parts[name] = {
      kind: 'three-phase-transformer',
      connection: connection === 'wye' ? draw.oneOf(['delta-wye', 'wye-wye']) : connection,
      rating_VA: draw.between(1e4, 2.5e6),
      secondary_V,
      ...(draw.likely(0.2) ? { angle_deg: draw.whole(-180, 180) } : {}),
      ...nameplate(writing),
      ...(draw.likely(0.5) ? { zero_sequence_ratio: draw.between(0.3, 5) } : {}),
      ...(draw.likely(0.5) ? { primary_VA: draw.between(1e6, 1e9), primary_x_over_r: draw.between(0.5, 20) } : {}),
      ...(draw.likely(0.4) ? { capacitance_nF: draw.between(1, 2000) } : {}),
    };
    return {
      lines: LINES.map((line) => `${name}.${line}`),
      ...(connection === 'delta' ? {} : { neutral: `${name}.neutral` }),
    };
  };

const splitPhase: Source = (writing, name) => {
  const { draw, parts } = writing;
  parts[name] = {
    kind: 'centre-tapped-transformer',
    rating_VA: draw.between(5e3, 1.67e5),
    ...nameplate(writing),
    ...(draw.likely(0.3) ? { primary_VA: draw.between(1e6, 1e9) } : {}),
  };
  return { lines: [`${name}.x1`, `${name}.x3`], neutral: `${name}.x2` };
};

const CONNECTIONS = ['single-phase', 'split-phase', 'three-phase'] as const;

const machine =
  (kind: 'generator' | 'inverter'): Source =>
  ({ draw, parts }, name) => {
    const connection = draw.oneOf(CONNECTIONS);
    parts[name] = {
      kind,
      connection,
      rating_VA: draw.between(500, 5e4),
      neutral: draw.oneOf(['floating', 'bonded']),
      ...(draw.likely(0.5) ? { impedance_percent: draw.between(1, 40), x_over_r: draw.between(0.1, 20) } : {}),
      ...(kind === 'generator' && draw.likely(0.3) ? { zero_sequence_ratio: draw.between(0.1, 3) } : {}),
      ...(kind === 'inverter' && draw.likely(0.5) ? { limit: draw.between(1, 4) } : {}),
      ...(draw.likely(0.2) ? { frame_to_earth_ohm: draw.between(10, 1e9) } : {}),
    };
    const lines = LINES.slice(0, CONNECTIONS.indexOf(connection) + 1).map((line) => `${name}.${line}`);
    return { lines, neutral: `${name}.neutral`, frame: `${name}.frame` };
  };

const plain: Source = (writing, name) => {
  const { draw, parts } = writing;
  parts[name] = {
    kind: 'source',
    emf_V: draw.between(6, 1000),
    angle_deg: draw.oneOf([0, 0, 30, -120, 180]),
    resistance_ohm: writing.ohm(1e-3, 5),
    reactance_ohm: (draw.likely(0.2) && !writing.direct ? -1 : 1) * draw.between(1e-3, 5),
    ...(draw.likely(0.1) ? { limit_A: draw.between(1, 1000) } : {}),
  };
  return { lines: [`${name}.plus`], neutral: `${name}.minus` };
};

/** Supplies as the trade calls them. */
const SUPPLIES: Readonly<Record<string, Source>> = {
  'split phase': splitPhase,
  '208Y/120': threePhase('wye', 208),
  '480Y/277': threePhase('wye', 480),
  '240 V high leg': threePhase('high-leg-delta', 240),
  '480 V delta': threePhase('delta', 480),
  '240 V delta': threePhase('delta', 240),
  '400Y/230': threePhase('wye', 400),
  generator: machine('generator'),
  inverter: machine('inverter'),
  'plain source': plain,
};

/** Any supply, called so in the file; of direct current the plain one. */
export function anySource(writing: Writing, name: string): Offered {
  const which = writing.direct ? 'plain source' : writing.draw.oneOf(Object.keys(SUPPLIES));
  writing.told.push(which);
  const offered = (SUPPLIES[which] ?? plain)(writing, name);
  writing.metal.push(...offered.lines, ...(offered.neutral === undefined ? [] : [offered.neutral]));
  if (offered.frame !== undefined) writing.metal.push(offered.frame);
  return offered;
}

/** A source that begins a system of its own inside an installation, fed from what is there; nothing earths it. */
export function anyDerived(writing: Writing, bars: Bars, name: string): Offered {
  const { draw, parts, join } = writing;
  const feeds = [...bars.lines, ...(bars.neutral === undefined ? [] : [bars.neutral])];
  const [a = '', b = '', c] = feeds;
  const kinds = [
    'single-phase',
    'centre-tapped',
    'ideal transformer',
    'coupled windings',
    ...(bars.lines.length === 3 ? ['delta-wye'] : []),
  ];
  const kind = draw.oneOf(kinds);
  writing.told.push(`derived: ${kind}`);
  if (kind === 'ideal transformer' || kind === 'coupled windings') {
    parts[name] = kind === 'ideal transformer' ? idealTransformer(writing) : coupledWindings(writing);
    join(a, `${name}.primary.dot`);
    join(b, `${name}.primary.end`);
    return { lines: [`${name}.secondary.dot`], neutral: `${name}.secondary.end` };
  }
  parts[name] = {
    kind: 'isolating-transformer',
    connection: kind,
    rating_VA: draw.between(500, 1e5),
    primary_V: draw.oneOf([120, 208, 230, 400, 480]),
    secondary_V: draw.oneOf([24, 48, 110, 120, 208, 230, 240, 400]),
    ...nameplate(writing),
  };
  join(a, `${name}.primary.a`);
  join(b, `${name}.primary.b`);
  if (kind === 'delta-wye' && c !== undefined) join(c, `${name}.primary.c`);
  const frame = `${name}.case`;
  writing.metal.push(frame);
  if (bars.earth !== undefined && draw.likely(0.8)) join(frame, bars.earth);
  const secondary = (end: string): string => `${name}.secondary.${end}`;
  if (kind === 'single-phase') return { lines: [secondary('a')], neutral: secondary('b'), frame };
  const lines = (kind === 'delta-wye' ? LINES : LINES.slice(0, 2)).map(secondary);
  return { lines, neutral: secondary('neutral'), frame };
}

function idealTransformer({ draw, wild }: Writing): object {
  const winding = (turns: number): unknown =>
    draw.likely(0.3) ? turns : { turns, resistance_ohm: draw.between(1e-3, 1), reactance_ohm: draw.between(1e-3, 1) };
  return {
    kind: 'ideal-transformer',
    windings: { primary: winding(draw.between(1, wild ? 1000 : 30)), secondary: winding(draw.between(1, 30)) },
  };
}

function coupledWindings({ draw }: Writing): object {
  const [one, other] = [draw.between(1, 1000), draw.between(1, 1000)];
  const mutual = (draw.likely(0.5) ? 1 : -1) * draw.between(0.1, 0.99) * Math.sqrt(one * other);
  return {
    kind: 'coupled-windings',
    windings: ['primary', 'secondary'],
    resistance_ohm: [
      [draw.between(0.01, 5), 0],
      [0, draw.between(0.01, 5)],
    ],
    reactance_ohm: [
      [one, mutual],
      [mutual, other],
    ],
  };
}
