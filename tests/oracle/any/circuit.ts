import { anyProtective, cable } from './feeder.ts';
import type { Bars, Writing } from './writing.ts';

/** The two conductors of a circuit: the first is protected. */
type Pair = readonly [hot: string, home: string];

const RATINGS_A = [6, 10, 15, 16, 20, 32, 60, 100] as const;
const TYPES = ['AC', 'A', 'F', 'B'] as const;

type Device = (writing: Writing, name: string, pair: Pair) => Pair;

function comparing({ parts, join }: Writing, name: string, part: object, [hot, home]: Pair): Pair {
  parts[name] = part;
  join(hot, `${name}.line.supply`);
  join(home, `${name}.neutral.supply`);
  return [`${name}.line.load`, `${name}.neutral.load`];
}

function inLine({ parts, join }: Writing, name: string, part: object, [hot, home]: Pair): Pair {
  parts[name] = part;
  join(hot, `${name}.line`);
  return [`${name}.load`, home];
}

const residual = ({ draw }: Writing, family: string): object => ({
  ...(draw.likely(0.2) ? { [family]: draw.oneOf(['ul943-class-a', 'iec61008', 'equipment']) } : {}),
  residual_A: draw.oneOf([0.01, 0.03, 0.1, 0.3]),
  type: draw.oneOf(TYPES),
  selective: draw.likely(0.2),
});

const DEVICES: Readonly<Record<string, Device>> = {
  breaker: (writing, name, pair) =>
    inLine(writing, name, { kind: 'breaker', rating_A: writing.draw.oneOf(RATINGS_A) }, pair),
  'two-pole breaker': ({ draw, parts, join }, name, [hot, home]) => {
    parts[name] = { kind: 'breaker', rating_A: draw.oneOf(RATINGS_A), poles: 2 };
    join(hot, `${name}.a.line`);
    join(home, `${name}.b.line`);
    return [`${name}.a.load`, `${name}.b.load`];
  },
  fuse: (writing, name, pair) => inLine(writing, name, { kind: 'fuse', rating_A: writing.draw.oneOf(RATINGS_A) }, pair),
  'device by points': (writing, name, pair) => {
    const holds_A = writing.draw.oneOf(RATINGS_A);
    const opens = [
      { at_A: holds_A * 1.4, within_s: 3600 },
      { at_A: holds_A * 3, within_s: 60 },
    ];
    return inLine(writing, name, { kind: 'device-by-points', holds_A, opens }, pair);
  },
  'residual device': (writing, name, pair) =>
    comparing(writing, name, { kind: 'residual-device', ...residual(writing, 'family') }, pair),
  rcbo: (writing, name, pair) =>
    comparing(
      writing,
      name,
      { kind: 'rcbo', rating_A: writing.draw.oneOf(RATINGS_A), ...residual(writing, 'residual_family') },
      pair,
    ),
  afci: (writing, name, pair) =>
    comparing(
      writing,
      name,
      { kind: 'afci', rating_A: 20, ...(writing.draw.likely(0.5) ? { residual_A: 0.03 } : {}) },
      pair,
    ),
  switch: ({ draw, parts, join, wild }, name, [hot, home]) => {
    parts[name] = { kind: 'switch', closed: !(wild && draw.likely(0.3)) };
    join(hot, `${name}.a`);
    return [`${name}.b`, home];
  },
};

const SETTABLE: ReadonlySet<string> = new Set(['breaker', 'two-pole breaker', 'fuse', 'rcbo', 'afci']);

function protect(writing: Writing, name: string, pair: Pair): Pair {
  const { draw, conditions } = writing;
  const which = draw.oneOf(Object.keys(DEVICES));
  const laid = DEVICES[which]?.(writing, name, pair) ?? pair;
  if (which !== 'switch' && draw.likely(0.1)) conditions[`${name} jammed`] = { kind: 'jammed', device: name };
  if (which === 'residual device' && draw.likely(0.2)) conditions[`${name} fitted`] = { kind: 'fitted', device: name };
  if (SETTABLE.has(which) && draw.likely(0.1))
    conditions[`${name} too large`] = { kind: 'setting', device: name, rating_A: draw.between(5, 200) };
  return laid;
}

/** A main switch with an electronic release, of as many poles as there are lines. */
export function anyMain(writing: Writing, name: string, bars: Bars): Bars {
  const { draw, parts, join } = writing;
  if (draw.likely(0.5)) return bars;
  const poles = bars.lines.length;
  const ends = poles === 1 ? [name] : bars.lines.map((_, at) => `${name}.${'abc'[at]}`);
  const delayed = { pickup_A: draw.between(5, 1000), delay_s: draw.between(0.03, 1), i2t: draw.likely(0.5) };
  const released = {
    kind: 'adjustable-breaker',
    poles,
    rating_A: draw.between(20, 400),
    ...(draw.likely(0.5) ? { short: delayed } : {}),
    ...(draw.likely(0.5) ? { instantaneous_A: draw.between(100, 5000) } : {}),
    ...(draw.likely(0.5) ? { ground: { pickup_A: draw.between(1, 300), delay_s: draw.between(0.03, 1) } } : {}),
    neutral: bars.neutral !== undefined,
  };
  const thermal = { kind: 'breaker', poles, rating_A: draw.oneOf([60, 100, 200, 400]) };
  const adjustable = draw.likely(0.6);
  parts[name] = adjustable ? released : thermal;
  bars.lines.forEach((line, at) => join(line, `${ends[at]}.line`));
  const lines = ends.map((end) => `${end}.load`);
  if (!adjustable || bars.neutral === undefined) return { ...bars, lines };
  join(bars.neutral, `${name}.neutral.line`);
  return { ...bars, lines, neutral: `${name}.neutral.load` };
}

/** The utility's meter, where there are two lines. */
export function anyMeter({ draw, parts, join }: Writing, name: string, bars: Bars): Bars {
  const [a, b] = bars.lines;
  if (a === undefined || b === undefined || bars.lines.length !== 2 || draw.likely(0.5)) return bars;
  parts[name] = { kind: 'meter' };
  join(a, `${name}.a.supply`);
  join(b, `${name}.b.supply`);
  return { ...bars, lines: [`${name}.a.load`, `${name}.b.load`] };
}

/** A circuit from any two of the bars: devices, a cable, perhaps a socket outlet, and whatever it feeds. */
export function anyCircuit(writing: Writing, name: string, bars: Bars): void {
  const { draw, parts, join, metal, conditions } = writing;
  const all = [...bars.lines, ...(bars.neutral === undefined ? [] : [bars.neutral])];
  const hot = draw.oneOf(bars.lines);
  const home =
    bars.neutral !== undefined && draw.likely(0.6) ? bars.neutral : draw.oneOf(all.filter((one) => one !== hot));
  let pair: Pair = [hot, home];
  for (let at = draw.whole(0, 2); at > 0; at -= 1) pair = protect(writing, `${name} device ${'ab'[at - 1]}`, pair);
  const from = { lines: [pair[0]], neutral: pair[1], ...(bars.earth === undefined ? {} : { earth: bars.earth }) };
  const laid = cable(writing, `${name} run`, from, anyProtective(writing));
  let [line = '', neutral = '', earth] = [laid.lines[0], laid.neutral, laid.earth];
  if (draw.likely(0.15))
    conditions[`${name} reversed`] = { kind: 'swap', ends: [`${name} run.a.load`, `${name} run.neutral.load`] };
  if (earth !== undefined && draw.likely(0.05) && bars.earth !== undefined)
    conditions[`${name} moved`] = {
      kind: 'move',
      end: earth.replace(/load$/, 'supply'),
      from: bars.earth,
      to: draw.oneOf(all),
    };
  const load = draw.oneOf(LOADS);
  if (load === 'nothing' || load === 'fixed-body' || draw.likely(0.4)) {
    parts[`${name} outlet`] = { kind: 'outlet' };
    join(line, `${name} outlet.line`);
    join(neutral, `${name} outlet.neutral`);
    if (earth !== undefined) join(earth, `${name} outlet.protective`);
    [line, neutral, earth] = [
      `${name} outlet.line`,
      `${name} outlet.neutral`,
      earth === undefined ? undefined : `${name} outlet.protective`,
    ];
  }
  metal.push(line, neutral);
  if (load !== 'nothing') lay(writing, load, `${name} load`, [line, neutral], earth);
}

const LOADS = [
  'appliance',
  'appliance',
  'appliance',
  'impedance',
  'capacitance',
  'harmonic-source',
  'fixed-body',
  'nothing',
] as const;

function lay(
  writing: Writing,
  kind: Exclude<(typeof LOADS)[number], 'nothing'>,
  name: string,
  [line, neutral]: Pair,
  earth: string | undefined,
): void {
  const { draw, parts, join, metal, conditions, direct } = writing;
  if (kind === 'fixed-body') {
    parts[name] = {
      kind,
      between: [line, draw.likely(0.5) ? neutral : 'earth'],
      resistance_ohm: writing.ohm(200, 1e4),
    };
    return;
  }
  if (kind === 'appliance') {
    const power = { power_W: draw.between(5, 2e4), ...(direct ? {} : { power_factor: draw.between(0.3, 1) }) };
    parts[name] = {
      kind,
      ...(draw.likely(0.7) ? power : { resistance_ohm: writing.ohm(0.5, 5000) }),
      feet: draw.oneOf(['rubber', 'metal']),
      ...(draw.likely(0.3) ? { insulation_ohm: writing.ohm(1e3, 1e9) || 1 } : {}),
      ...(draw.likely(0.3)
        ? { filter_nF: draw.between(0.1, 1000) }
        : draw.likely(0.3)
          ? { leakage_A: draw.between(1e-4, 0.05) }
          : {}),
    };
    join(line, `${name}.line`);
    join(neutral, `${name}.neutral`);
    metal.push(`${name}.case`);
    if (earth !== undefined) join(earth, `${name}.case`);
  } else {
    const orders = direct ? [1] : draw.oneOf([[1], [1, 3], [3, 5, 7], [3], [1, 3, 9, 15]]);
    const currents = orders.map((order) => ({
      order,
      current_A: draw.between(0.01, 20) / order,
      angle_deg: draw.whole(-180, 180),
    }));
    const made = {
      impedance: {
        resistance_ohm: writing.ohm(0.5, 5000),
        reactance_ohm: draw.oneOf([0, 1, -1]) * draw.between(0.01, 500),
      },
      capacitance: { capacitance_F: draw.between(1e-9, 1e-4) },
      'harmonic-source': { currents, shift_deg: draw.oneOf([0, 0, -120, 120]) },
    };
    parts[name] = { kind, ...made[kind] };
    join(line, `${name}.a`);
    join(neutral, `${name}.b`);
  }
  if (draw.likely(0.3)) conditions[`${name} running`] = { kind: 'running', appliance: name };
}
