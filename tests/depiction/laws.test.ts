import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawnPlaceNames } from '../../.ci/drawnPlaces.mjs';
import { LEAST_A } from '../../src/depiction/flow.ts';
import { depict } from '../../src/depiction/index.ts';
import { abs, phasor } from '../../src/electrics/index.ts';
import { at } from '../../src/scenario/index.ts';
import { anyMoment, picturedPlace } from './pictured.ts';

/** The bakery's two lamps hang side by side: each carries half of what the network knows as one load. */
const HALVED = new Set(['lamps', 'lamps twin', 'lamp run.line, second lamp', 'lamp run.neutral, second lamp']);

describe.each(drawnPlaceNames())('in every picture of the %s', (name) => {
  const { build, runOf, pictured, anyConditions } = picturedPlace(name);

  test('every ampere is the solution’s', () => {
    fc.assert(
      fc.property(anyConditions, anyMoment, (conditions, time_s) => {
        const timeline = runOf(conditions);
        const { solution } = at(timeline, time_s);
        for (const { id, branches, amperes } of depict(timeline, time_s, build.installation.region).ribbons) {
          if (branches.length === 0) continue; // soil between electrodes: the junctions below check it
          const sum = branches
            .map((branch) => phasor(solution.amperes, build.branch(branch)))
            .reduce((a, b) => ({ re: a.re + b.re, im: a.im + b.im }));
          const share = name === 'bakery' && HALVED.has(id) ? 0.5 : 1;
          expect(amperes / (abs(sum) * share), id).toBeCloseTo(1, 9);
        }
      }),
      { numRuns: 60, seed: 11 },
    );
  });

  test('what flows into a junction flows out of it', () => {
    fc.assert(
      fc.property(anyConditions, anyMoment, (conditions, time_s) => {
        const net = new Map<string, { sum: number; ids: string[] }>();
        for (const { id, route, inPhase_A } of pictured(time_s, conditions).ribbons)
          for (const [end, sign] of [
            [route[0], -1],
            [route.at(-1), 1],
          ] as const) {
            const key = `${Math.round(end?.x ?? 0)} ${Math.round(end?.y ?? 0)}`;
            const { sum, ids } = net.get(key) ?? { sum: 0, ids: [] };
            net.set(key, { sum: sum + sign * inPhase_A, ids: [...ids, id] });
          }
        // What is too small to be drawn may be missing at a junction; a handful of such ways can meet in one.
        for (const [key, { sum, ids }] of net)
          expect(Math.abs(sum), `${key}: ${ids.join(', ')}`).toBeLessThan(4 * LEAST_A);
      }),
      { numRuns: 120, seed: 12 },
    );
  });
});
