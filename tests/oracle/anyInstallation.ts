/** Installations by chance, written as files are: every supply, every way to earth it, every kind of part and condition. */
import type { Conditions, Installation } from '../../src/installation/index.ts';
import { chance } from '../scenario/anyCase.ts';
import { anyCircuit, anyMain, anyMeter } from './any/circuit.ts';
import { anyFeeder, throughTransfer } from './any/feeder.ts';
import { anyDerived, anySource } from './any/source.ts';
import type { Offered } from './any/source.ts';
import { anyPeople, anyTrouble } from './any/trouble.ts';
import { writing } from './any/writing.ts';
import type { Kept, Writing } from './any/writing.ts';

/** What was written, and what it is in words that can be counted. */
export interface Written {
  readonly file: object;
  readonly told: readonly string[];
}

/** The same for the same seed and options. */
export function anyInstallation(seed: number, options: Partial<Kept> = {}): Written {
  const given = writing(seed, options);
  const { draw, region, direct, parts, joins, conditions, told } = given;
  let offered = anySource(given, 'supply');
  if (!direct && draw.likely(0.15)) offered = throughTransfer(given, 'transfer', offered, anySource(given, 'standby'));
  else if (draw.likely(0.06)) {
    told.push('two in parallel');
    inParallel(given, offered, anySource(given, 'second'));
  }
  const metered = anyMain(given, 'main', anyMeter(given, 'meter', offered));
  const bars = anyFeeder(given, 'service', { ...offered, ...metered });
  for (let at = draw.whole(0, 3); at >= 1; at -= 1) anyCircuit(given, `circuit ${'abc'[at - 1]}`, bars);
  if (!direct && draw.likely(0.35)) {
    const inner = anyFeeder(given, 'inner', anyDerived(given, bars, 'derived'));
    anyCircuit(given, 'inner circuit', inner);
  }
  if (draw.likely(0.3)) {
    parts.sink = { kind: 'fitting' };
    given.metal.push('sink.metal');
    if (bars.earth !== undefined && draw.likely(0.6)) given.join('sink.metal', bars.earth);
  }
  anyTrouble(given);
  anyPeople(given);
  const frequency = direct ? { frequency_Hz: 0 } : draw.likely(0.1) ? { frequency_Hz: draw.oneOf([16.7, 400]) } : {};
  if (direct) told.push('direct current');
  return { file: { place: 'Anywhere', region, ...frequency, parts, joins, conditions }, told };
}

/** Joins two supplies, in phase or not. */
function inParallel({ join }: Writing, one: Offered, other: Offered): void {
  one.lines.forEach((line, at) => join(line, other.lines[at] ?? line));
  join(one.neutral ?? one.lines[0] ?? '', other.neutral ?? other.lines[1] ?? '');
}

/** Any option of every condition; as it should be more often than not. */
export function anyConditions({ conditions }: Installation, seed: number): Conditions {
  const next = chance(seed ^ 0x5bd1e995);
  return Object.fromEntries(
    Object.entries(conditions).map(([name, { options }]) => [
      name,
      (next() < 0.5 ? options[0] : options[Math.floor(next() * options.length)]) ?? 'no',
    ]),
  );
}
