import { describe, expect, test } from 'vitest';
import { account, findings } from '../../src/explain/index.ts';
import type { Conditions } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import type { Timeline } from '../../src/scenario/index.ts';
import { built } from '../installation/places.ts';
import { broken } from './holds.ts';

/** A heater on 20 m of cable behind one device (invented): 230 V and 2.5 mm², or 120 V and 14 AWG. */
function bench(device: string, { region = 'iec', neutral = false, conditions = '' } = {}): string {
  const [emf_V, size] = region === 'iec' ? [230, '2.5 mm² Cu'] : [120, '14 AWG Cu'];
  const side = /residual-device|rcbo|afci/.test(device)
    ? ['device.line.supply', 'device.line.load']
    : ['device.line', 'device.load'];
  const through = /adjustable/.test(device)
    ? ['device.neutral.line', 'device.neutral.load']
    : ['device.neutral.supply', 'device.neutral.load'];
  return `place: A bench
region: ${region}
parts:
  supply: { kind: source, emf_V: ${emf_V}, resistance_ohm: 0.1 }
  device: { ${device} }
  run: { kind: cable, length_m: 20, cores: { line: ${size}, neutral: ${size}, protective: ${size} } }
  heater: { kind: appliance, power_W: 1000, case: metal }
joins:
  - [supply.minus, earth]
  - [supply.plus, ${side[0]}]
  - [${side[1]}, run.line.supply]
  - [supply.minus, ${neutral ? through[0] : 'run.neutral.supply'}]
${neutral ? `  - [${through[1]}, run.neutral.supply]` : ''}
  - [supply.minus, run.protective.supply]
  - [run.line.load, heater.line]
  - [run.neutral.load, heater.neutral]
  - [run.protective.load, heater.case]
conditions:
  fault: { kind: insulation-fault, between: [heater.line, heater.case], resistance_ohm: { solid: 0.01, poor: 5, leak: 2000, damp: 100000 } }
  neutral touches: { kind: link, between: [heater.neutral, heater.case] }
  heater runs: { kind: running, appliance: heater, initially: 'yes' }
${conditions}`;
}

function told(text: string, conditions: Conditions = {}, options: Parameters<typeof run>[2] = {}): Timeline {
  return run(built(text), { 'heater runs': 'yes', ...conditions }, options);
}

/** Who acted, by what and when. */
function acted({ intervals }: Timeline): readonly (readonly [string, string, number])[] {
  return intervals.flatMap(({ because, start_s }) =>
    because.kind === 'device-operated' || because.kind === 'device-warned'
      ? [[because.device, because.operation.region, start_s] as const]
      : [],
  );
}

const words = (timeline: Timeline): string =>
  account(timeline, timeline.build.installation.region)
    .story.map(({ text }) => text)
    .join(' ');

describe('one device and a fault behind it', () => {
  test.each([
    ['kind: fuse, rating_A: 16', 'solid', 'melting', 0.004, 'melts and is clear'],
    ['kind: fuse, rating_A: 16', 'poor', 'melting', 60, 'melts and is clear'],
    [
      'kind: device-by-points, holds_A: 20, opens: [{ at_A: 40, within_s: 120 }]',
      'poor',
      'published',
      120,
      'its sheet allows',
    ],
    ['kind: adjustable-breaker, rating_A: 16, poles: 1', 'poor', 'long-time', 60, 'its long-time element'],
    [
      'kind: adjustable-breaker, rating_A: 16, poles: 1, short: { pickup_A: 80, delay_s: 0.3 }',
      'solid',
      'short-time',
      0.4,
      'has waited',
    ],
    [
      'kind: adjustable-breaker, rating_A: 16, poles: 1, instantaneous_A: 160',
      'solid',
      'magnetic',
      0.05,
      'magnetic part',
    ],
  ])('%s opens on a %s fault: %s', (device, fault, region, within_s, said) => {
    const timeline = told(bench(device), { fault });
    const [[, by, at_s] = ['', '', Infinity]] = acted(timeline);
    expect(by).toBe(region);
    expect(at_s).toBeLessThan(within_s);
    expect(timeline.intervals.at(-1)?.devices[0]?.state).toBe('open');
    expect(words(timeline)).toContain(said);
  });

  test.each([
    ['kind: residual-device', 'residual', 'what does not come back'],
    ['kind: rcbo, rating_A: 16', 'residual', 'what does not come back'],
    [
      'kind: adjustable-breaker, rating_A: 16, poles: 1, neutral: true, ground: { pickup_A: 0.05, delay_s: 0.1 }',
      'ground-fault',
      'by its ground-fault element',
    ],
  ])('%s opens on a leak of 0.1 A that no fuse would notice', (device, region, said) => {
    const timeline = told(bench(device, { neutral: true }), { fault: 'leak' });
    expect(acted(timeline).map(([, by]) => by)).toEqual([region]);
    expect(words(timeline)).toContain(said);
    expect(acted(told(bench('kind: fuse, rating_A: 16'), { fault: 'leak' }))).toEqual([]);
  });

  test('an RCBO opens on a short circuit by its magnetic part, and on a load by neither', () => {
    const text = bench('kind: rcbo, rating_A: 16', { neutral: true });
    expect(acted(told(text, { fault: 'solid' }))[0]?.[1]).toBe('magnetic');
    expect(acted(told(text))).toEqual([]);
  });

  test('a residual device whose neutral does not pass through it sees the whole load as missing', () => {
    const right = bench('kind: residual-device', { neutral: true });
    const wrong = bench('kind: residual-device, senses: [line]', { neutral: true });
    expect(acted(told(right))).toEqual([]);
    expect(acted(told(wrong)).map(([, by]) => by)).toEqual(['residual']);
  });

  test('a selective residual device upstream leaves the fault to the one downstream, though it carries as much', () => {
    const text = bench('kind: residual-device', { neutral: true })
      .replace('parts:', 'parts:\n  main: { kind: residual-device, residual_A: 0.3, selective: true }')
      .replace(
        '[supply.plus, device.line.supply]',
        '[supply.plus, main.line.supply]\n  - [main.line.load, device.line.supply]',
      )
      .replace(
        '[supply.minus, device.neutral.supply]',
        '[supply.minus, main.neutral.supply]\n  - [main.neutral.load, device.neutral.supply]',
      );
    for (const tolerance of ['fast', 'middle', 'slow'] as const)
      expect(acted(told(text, { fault: 'poor' }, { tolerance })).map(([device]) => device)).toEqual(['device']);
  });

  test('an arc-fault breaker acts as a breaker and, where it has the element, on 30 mA; never on an arc', () => {
    const leaky = bench('kind: afci, rating_A: 15, residual_A: 0.03', { region: 'north-america', neutral: true });
    const plain = bench('kind: afci, rating_A: 15', { region: 'north-america', neutral: true });
    expect(acted(told(leaky, { fault: 'leak' })).map(([, by]) => by)).toEqual(['residual']);
    expect(acted(told(plain, { fault: 'leak' }))).toEqual([]);
    expect(acted(told(plain, { fault: 'solid' })).length).toBe(1);
  });
});

describe('conditions of a device', () => {
  const conditions = `
  other link: { kind: setting, device: device, rating_A: 63 }
  bridged: { kind: jammed, device: device }`;

  test('a larger fuse-link takes longer, a bridged one never opens', () => {
    const text = bench('kind: fuse, rating_A: 16', { conditions });
    const time = (more: Conditions) => acted(told(text, { fault: 'solid', ...more }))[0]?.[2] ?? Infinity;
    expect(time({ 'other link': 'yes' })).toBeGreaterThan(20 * time({}));
    expect(time({ bridged: 'yes' })).toBe(Infinity);
  });

  test('an RCBO set to 0.3 A leaves a leak of 0.1 A alone and keeps its rating', () => {
    const text = bench('kind: rcbo, rating_A: 16', {
      neutral: true,
      conditions: '\n  set high: { kind: setting, device: device, residual_A: 0.3 }',
    });
    expect(acted(told(text, { fault: 'leak', 'set high': 'yes' }))).toEqual([]);
    expect(acted(told(text, { fault: 'solid', 'set high': 'yes' }))[0]?.[1]).toBe('magnetic');
  });
});

describe('a GFCI with the neutral grounded downstream', () => {
  const text = bench('kind: residual-device', { region: 'north-america', neutral: true });

  test('opens with no load running, by its own detector (UL 943)', () => {
    const timeline = told(text, { 'neutral touches': 'yes', 'heater runs': 'no' });
    expect(acted(timeline).map(([, by]) => by)).toEqual(['grounded-neutral']);
    expect(timeline.intervals[0]?.devices[0]?.reads_ohm).toBeGreaterThan(0.3);
    expect(timeline.intervals[0]?.devices[0]?.reads_ohm).toBeLessThan(0.6);
    expect(words(timeline)).toContain('load or no load');
    expect(broken(timeline)).toEqual([]);
  });

  test('the loop it reads is that of the neutral and the protective conductor, as Ohm has it', () => {
    const build = built(text);
    const [interval] = told(text, { 'neutral touches': 'yes', 'heater runs': 'no' }).intervals;
    const { re } = interval!.values.impedance;
    const loop = ['device.neutral', 'run.neutral', 'run.protective', 'neutral touches'].reduce(
      (sum, name) => sum + (re[build.branch(name)] ?? NaN),
      0,
    );
    // Joints at the ends of the cores come on top, a few milliohms.
    expect(interval!.devices[0]!.reads_ohm! / loop).toBeGreaterThan(1);
    expect(interval!.devices[0]!.reads_ohm! / loop).toBeLessThan(1.05);
  });

  test('with the load running it opens the sooner on what does not come back', () => {
    expect(acted(told(text, { 'neutral touches': 'yes' })).map(([, by]) => by)).toEqual(['residual']);
  });

  test('sound wiring and a person in touch with the line are no such loop', () => {
    expect(acted(told(text, { 'heater runs': 'no' }))).toEqual([]);
    expect(told(text).intervals[0]?.devices[0]?.reads_ohm).toBeGreaterThan(1e6);
    expect(told(text, { fault: 'leak' }).intervals[1]?.devices[0]?.reads_ohm).toBeGreaterThan(1000);
  });

  test('that is not fitted would have found it', () => {
    const conditions = "\n  device fitted: { kind: fitted, device: device, initially: 'yes' }";
    const bare = bench('kind: residual-device', { region: 'north-america', neutral: true, conditions });
    const given = { 'device fitted': 'no', 'neutral touches': 'yes', 'heater runs': 'no', fault: 'damp' };
    const timeline = told(bare, given);
    expect(acted(timeline)).toEqual([]);
    expect(words(timeline)).toContain('One would have found the neutral linked to ground downstream');
  });

  test('an IEC device has no such detector', () => {
    const iec = bench('kind: residual-device', { neutral: true });
    expect(acted(told(iec, { 'neutral touches': 'yes', 'heater runs': 'no' }))).toEqual([]);
  });
});

describe('an insulation monitor in an IT system', () => {
  const theatre = `place: A theatre
region: iec
parts:
  supply: { kind: source, emf_V: 230, resistance_ohm: 0.1 }
  monitor: { kind: insulation-monitor, threshold_ohm: 50000 }
  cable capacitance: { kind: capacitance, between: [supply.plus, earth], capacitance_F: 1.0e-6 }
  lamp: { kind: appliance, power_W: 1000, case: metal }
joins:
  - [supply.plus, lamp.line]
  - [supply.minus, lamp.neutral]
  - [lamp.case, earth]
  - [supply.minus, monitor.system]
  - [monitor.earth, earth]
conditions:
  fault: { kind: insulation-fault, between: [lamp.line, lamp.case], resistance_ohm: { solid: 0.01, damp: 30000, damper: 80000 } }
  broken monitor: { kind: fitted, device: monitor, initially: 'yes' }
`;
  const warned = (conditions: Conditions) => run(built(theatre), { 'broken monitor': 'yes', ...conditions });

  test('warns of the first fault and opens nothing', () => {
    const timeline = warned({ fault: 'solid' });
    expect(acted(timeline).map(([device, by]) => [device, by])).toEqual([['monitor', 'insulation']]);
    expect(acted(timeline)[0]?.[2]).toBeLessThan(10);
    const [before, after] = timeline.intervals.slice(-2);
    expect(after?.devices[0]?.state).toBe('warning');
    expect([...(after?.solution.amperes.re ?? [])]).toEqual([...(before?.solution.amperes.re ?? [])]);
    expect(words(timeline)).toContain('It opens nothing');
    expect(account(timeline, 'iec').headline).toContain('warns');
  });

  test('reads the resistance of the insulation whatever the capacitance beside it', () => {
    for (const [fault, ohm] of [
      ['damp', 30_000],
      ['damper', 80_000],
    ] as const) {
      const [, interval] = warned({ fault }).intervals;
      expect(interval!.devices[0]!.reads_ohm! / ohm).toBeCloseTo(1, 2);
    }
    expect(acted(warned({ fault: 'damper' }))).toEqual([]);
  });

  test('that is not there warns of nothing', () => {
    expect(acted(warned({ fault: 'solid', 'broken monitor': 'no' }))).toEqual([]);
  });
});

describe('two devices in series', () => {
  const two = (upstream: string, device = 'kind: breaker, rating_A: 16') =>
    bench(device)
      .replace('parts:', `parts:\n  upstream: { ${upstream} }`)
      .replace('[supply.plus, device.line]', '[supply.plus, upstream.line]\n  - [upstream.load, device.line]');

  test('of two equal breakers both are said to be possible', () => {
    const timeline = told(two('kind: breaker, rating_A: 16'), { fault: 'solid' });
    expect(acted(timeline).length).toBe(1);
    expect(words(timeline)).toContain('The device may open first, or with it');
  });

  test('a breaker below a fuse of 100 A is alone', () => {
    const timeline = told(two('kind: fuse, rating_A: 100'), { fault: 'solid' });
    expect(acted(timeline)[0]?.[0]).toBe('device');
    expect(words(timeline)).not.toContain('may open first');
  });

  test('a fuse below a breaker that waits is alone, and the breaker above a slow fuse is not', () => {
    const waits = 'kind: adjustable-breaker, rating_A: 40, poles: 1, short: { pickup_A: 200, delay_s: 0.3 }';
    const quick = told(two(waits, 'kind: fuse, rating_A: 16'), { fault: 'solid' });
    expect([acted(quick)[0]?.[0], words(quick).includes('may open first')]).toEqual(['device', false]);
    const slow = told(two(waits, 'kind: fuse, rating_A: 63'), { fault: 'solid' });
    expect(words(slow)).toContain('may open first');
  });

  test('up to what current the lower one is sure to open alone is told, and what it lets through', () => {
    const timeline = told(two('kind: breaker, rating_A: 63', 'kind: breaker, rating_A: 10'), { fault: 'solid' });
    // IEC 60898-1 type B: the upper one may act at once above three times 63 A.
    expect(words(timeline)).toContain('only up to 189\u00a0A is this one sure to open alone');
    const [opened] = findings(timeline).filter(({ kind }) => kind === 'device-operated');
    const amperes = timeline.intervals[1]!.devices.find(({ device }) => device === 'device')!.amperes;
    expect(opened).toMatchObject({ letsThrough: { least_A2s: 0.01 * amperes ** 2, most_A2s: 0.02 * amperes ** 2 } });
  });
});

describe('a conductor and its fault current', () => {
  const conditions = '\n  bridged: { kind: jammed, device: device }';

  test('of a bridged fuse is said to be spent when k²S² says so, and when it would burn open', () => {
    const timeline = told(bench('kind: fuse, rating_A: 16', { conditions }), { fault: 'solid', bridged: 'yes' });
    const amperes = timeline.intervals[1]!.devices[0]!.amperes;
    // IEC 60364-5-54: k 115 for a PVC core, 2.5 mm²; the printed k is rounded.
    const spent_s = ((115 * 2.5) / amperes) ** 2;
    const line = account(timeline, 'iec').story.find(({ text }) => text.includes('k²S²'));
    expect(line!.at_s / spent_s).toBeGreaterThan(0.98);
    expect(line!.at_s / spent_s).toBeLessThan(1.02);
    expect(line!.text).toContain('burn open');
  });

  test('behind its own fuse nothing is said of it', () => {
    expect(words(told(bench('kind: fuse, rating_A: 16', { conditions }), { fault: 'solid' }))).not.toContain('k²S²');
  });

  test('that takes more than five seconds is not judged by a rule that leaves out its cooling', () => {
    const timeline = told(bench('kind: fuse, rating_A: 16', { conditions }), { fault: 'poor', bridged: 'yes' });
    expect(words(timeline)).not.toContain('k²S²');
  });
});
