import { expect, test } from 'vitest';
import { verdicts } from '../../src/explain/index.ts';
import { initialConditions } from '../../src/installation/index.ts';
import { built } from '../installation/places.ts';

const judged = (kind: string) => {
  const build = built(`
place: A supply on its own
region: north-america
parts:
  supply: { kind: ${kind}, rating_VA: 3000, neutral: bonded, impedance_percent: 2 }
  breaker: { kind: breaker, rating_A: 20 }
  run: { kind: cable, length_m: 10, cores: { line: 12 AWG Cu, neutral: 12 AWG Cu, protective: 12 AWG Cu } }
  heater: { kind: appliance, power_W: 600, case: metal }
joins:
  - [supply.a, breaker.line]
  - [breaker.load, run.line.supply]
  - [supply.neutral, run.neutral.supply]
  - [supply.frame, run.protective.supply]
  - [supply.frame, earth]
  - [run.line.load, heater.line]
  - [run.neutral.load, heater.neutral]
  - [run.protective.load, heater.case]
`);
  const found = verdicts(build, initialConditions(build.installation)).filter(({ part }) => part === 'heater');
  const of = (wanted: string) => found.find((verdict) => verdict.kind === wanted);
  return { fault_A: of('fault-to-metal')?.value, time: of('disconnection')?.holds, loop: of('loop')?.holds };
};

test('behind an inverter a fault draws its limit and no loop is small enough; behind a generating set it is', () => {
  const inverter = judged('inverter');
  expect(inverter.fault_A).toBeCloseTo(37.5, 6);
  expect(inverter.time).not.toBe('yes');
  expect(inverter.loop).not.toBe('yes');
  const set = judged('generator');
  expect(set.fault_A).toBeGreaterThan(300);
  expect(set.time).toBe('yes');
  expect(set.loop).toBe('yes');
});
