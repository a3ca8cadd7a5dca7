/** A million people who touch one source: what their bodies carry and the zones they come to. */
import { population } from '../../../src/body/index.ts';
import type { People } from '../../../src/body/index.ts';
import { median } from '../row.ts';
import type { Row } from '../row.ts';
import { timed } from './timed.ts';

const TENTH = 100_000;
const touched = { volts: 230, impedance_ohm: { re: 20, im: 2 }, frequency_Hz: 50 };
const people: People = {
  touches: { 'right hand to feet': 7, 'left hand to feet': 2, 'hand to hand': 1 },
  skins: { dry: 7, 'water-wet': 3 },
  areas: { large: 8, medium: 2 },
  shoe_ohm: { median: 5000, factor: 20 },
  floor_ohm: { median: 150, factor: 4 },
  time_s: { median: 0.5, factor: 6 },
  size: 'adult',
};

/** Processor time of one core for a million people; two workers halve it. */
export function crowdRows(): readonly Row[] {
  const tenths_us = Array.from({ length: 7 }, () => timed(() => population(touched, people, 1, 0, TENTH), 2));
  return [
    {
      name: 'a million people who touch one source',
      value: (10 * median(tenths_us)) / 1e6,
      unit: 's',
      budget: 2,
      bound: 'at most',
      peer: 'processor time on one core; two workers halve it',
    },
  ];
}
