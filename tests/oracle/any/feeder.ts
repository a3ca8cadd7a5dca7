import { anyElectrode, anySoil } from './electrode.ts';
import type { Offered } from './source.ts';
import type { Bars, Writing } from './writing.ts';

const CONDUCTORS = [
  '14 AWG Cu',
  '12 AWG Cu',
  '6 AWG Cu',
  '2 AWG Al',
  '250 kcmil Cu',
  '1.5 mm² Cu',
  '2.5 mm² Cu',
  '10 mm² Cu',
  '95 mm² Al',
];
const PROTECTIVE = ['protective', 'protective', 'armour', 'conduit', 'screen'] as const;
type Protective = (typeof PROTECTIVE)[number] | 'PEN' | 'none';

/** Ways to earth a supply and what it feeds (IEC 60364-1), and what is met beside them. */
const EARTHINGS = [
  'TN-S',
  'TN-S',
  'TN-C-S',
  'TT',
  'IT',
  'high resistance',
  'corner',
  'two rods in one soil',
  'nothing',
] as const;

function core({ draw, direct, ohm }: Writing): unknown {
  if (draw.likely(0.85)) return draw.oneOf(CONDUCTORS);
  return { resistance_ohm: ohm(1e-3, 10), reactance_ohm: direct ? 0 : draw.between(1e-4, 1) };
}

function protectiveCore(writing: Writing, kind: Protective): unknown {
  if (kind === 'armour') return writing.draw.oneOf(['SWA 2.5 mm² 3-core', 'SWA 10 mm² 2-core']);
  return kind === 'conduit' ? writing.draw.oneOf(['EMT 1/2', 'EMT 3/4', 'rigid 1']) : core(writing);
}

/** A cable with these conductors from bars to terminals that are its far ends; what it protects with is `protective`. */
export function cable(writing: Writing, name: string, from: Bars, protective: Protective): Bars {
  const { draw, parts, join, conductors } = writing;
  const own = protective === 'PEN' ? 'PEN' : 'neutral';
  const lines = from.lines.map((_, at) => 'abc'[at] ?? '');
  const cores: Record<string, unknown> = Object.fromEntries(lines.map((line) => [line, core(writing)]));
  if (from.neutral !== undefined || protective === 'PEN') cores[own] = core(writing);
  const earths = protective !== 'PEN' && protective !== 'none' && from.earth !== undefined;
  if (earths) cores[protective] = protectiveCore(writing, protective);
  parts[name] = {
    kind: 'cable',
    length_m: writing.wild && draw.likely(0.1) ? 10_000 : draw.between(1, 400),
    cores,
    ...(draw.likely(0.3) ? { temperature_C: draw.whole(-20, 90) } : {}),
    ...(draw.likely(0.3) ? { raceway: draw.oneOf(['pvc', 'aluminium', 'steel']) } : {}),
    ...(draw.likely(0.1) ? { insulation_ohm_m: draw.between(1e6, 1e12) } : {}),
    ...(draw.likely(0.3) ? { capacitance_nF_m: draw.between(0.05, 1) } : {}),
  };
  conductors.push(...Object.keys(cores).map((each) => `${name}.${each}`));
  const end = (which: string): string => `${name}.${which}.load`;
  lines.forEach((line, at) => join(from.lines[at] ?? '', `${name}.${line}.supply`));
  if (from.neutral !== undefined) join(from.neutral, `${name}.${own}.supply`);
  if (earths) join(from.earth ?? '', `${name}.${protective}.supply`);
  return {
    lines: lines.map(end),
    ...(Object.hasOwn(cores, own) ? { neutral: end(own) } : {}),
    ...(protective === 'PEN' ? { earth: end('PEN') } : earths ? { earth: end(protective) } : {}),
  };
}

/** Any metal that protects in a cable. */
export function anyProtective({ draw }: Writing): Protective {
  return draw.likely(0.1) ? 'none' : draw.oneOf(PROTECTIVE);
}

/** Earths a supply in any way, leads it through a cable to a panel, earthed there as that way asks, sometimes wrongly. */
export function anyFeeder(writing: Writing, name: string, offered: Offered): Bars {
  const { draw, parts, join, told } = writing;
  const drawn = draw.oneOf(EARTHINGS);
  const earthing =
    (drawn === 'TN-C-S' && offered.neutral === undefined) || (drawn === 'two rods in one soil' && draw.likely(0.7))
      ? 'TN-S'
      : drawn;
  told.push(earthing);
  const point = (earthing === 'corner' ? offered.lines[0] : offered.neutral) ?? offered.lines[0] ?? '';
  let protective: string | undefined = offered.frame;
  let far: string | undefined;
  switch (earthing) {
    case 'IT':
    case 'nothing':
      break;
    case 'high resistance':
      parts[`${name} resistor`] = { kind: 'impedance', resistance_ohm: writing.ohm(20, 3000), as: 'bond' };
      join(point, `${name} resistor.a`);
      protective = anyElectrode(writing, `${name} electrode`);
      join(`${name} resistor.b`, protective);
      break;
    case 'two rods in one soil': {
      const rods = anySoil(writing, `${name} soil`);
      join(point, rods[0]);
      far = rods[1];
      protective = draw.likely(0.5) ? point : undefined;
      break;
    }
    default:
      join(point, anyElectrode(writing, `${name} electrode`));
      protective = earthing === 'TT' ? undefined : point;
  }
  if (offered.frame !== undefined && protective !== undefined) join(offered.frame, protective);
  const kind = earthing === 'TN-C-S' ? 'PEN' : earthing === 'TT' ? 'none' : anyProtective(writing);
  const { lines, neutral, earth } = cable(
    writing,
    `${name} feeder`,
    { ...offered, ...(protective === undefined ? {} : { earth: protective }) },
    kind,
  );

  const panel = `${name} panel`;
  const service = lines.length === 2 && neutral !== undefined && draw.likely(0.5);
  parts[panel] = service
    ? { kind: 'service-panel' }
    : { kind: 'panel', lines: lines.length, neutral: neutral !== undefined };
  const bars = lines.map((_, at) => `${panel}.${'abc'[at]}`);
  const [neutralBar, earthBar] = [`${panel}.neutral bar`, `${panel}.earth bar`];
  lines.forEach((line, at) => join(line, bars[at] ?? ''));
  if (neutral !== undefined) join(neutral, neutralBar);
  if (earth !== undefined) join(earth, earthBar);
  if (neutral !== undefined && earthing !== 'TN-C-S' && draw.likely(0.15)) {
    told.push('doubled bond');
    parts[`${name} jumper`] = { kind: 'joint', between: [neutralBar, earthBar] };
  }
  if (earthing === 'TT' || (earthing === 'IT' && draw.likely(0.8)) || draw.likely(0.15))
    join(earthBar, anyElectrode(writing, `${name} rod`));
  if (far !== undefined) join(earthBar, far);
  if (earthing === 'IT' && draw.likely(0.5)) {
    parts[`${name} monitor`] = { kind: 'insulation-monitor', own_ohm: draw.between(1e4, 1e6) };
    join(`${name} monitor.system`, neutral === undefined ? (bars[0] ?? '') : neutralBar);
    join(`${name} monitor.earth`, earthBar);
  }
  writing.metal.push(...bars, earthBar, ...(neutral === undefined ? [] : [neutralBar]));
  return { lines: bars, ...(neutral === undefined ? {} : { neutral: neutralBar }), earth: earthBar };
}

/** Puts a switch between two supplies in front of what follows; what the lines and the neutral become. */
export function throughTransfer(writing: Writing, name: string, normal: Offered, alternative: Offered): Offered {
  const { draw, parts, join } = writing;
  const count = Math.min(normal.lines.length, alternative.lines.length);
  const both = normal.neutral !== undefined && alternative.neutral !== undefined;
  const neutral = both && draw.likely(0.5) ? 'switched' : 'solid';
  parts[name] = { kind: 'transfer-switch', lines: count, neutral, resistance_ohm: writing.ohm(1e-4, 0.01) };
  writing.conditions[`${name} thrown`] = { kind: 'transfer', switch: name };
  writing.told.push(`transfer: ${neutral} neutral`);
  const lines = 'abc'.slice(0, count).split('');
  lines.forEach((line, at) => {
    join(normal.lines[at] ?? '', `${name}.${line}.normal`);
    join(alternative.lines[at] ?? '', `${name}.${line}.alternative`);
  });
  for (const [supply, offered] of [
    ['normal', normal],
    ['alternative', alternative],
  ] as const)
    if (offered.neutral !== undefined)
      join(offered.neutral, neutral === 'switched' ? `${name}.neutral.${supply}` : `${name}.neutral`);
  const frame = normal.frame ?? alternative.frame;
  const own = neutral === 'switched' ? `${name}.neutral.load` : `${name}.neutral`;
  return {
    lines: lines.map((line) => `${name}.${line}.load`),
    ...(normal.neutral === undefined && alternative.neutral === undefined ? {} : { neutral: own }),
    ...(frame === undefined ? {} : { frame }),
  };
}
