import fc from 'fast-check';
import { expect, test } from 'vitest';
import { account, telling } from '../../src/explain/index.ts';
import { compile, initialConditions, readInstallation } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import { anyPlainCircuit } from './anyPlainCircuit.ts';

test('any circuit of plain parts is answered in finite numbers, or refused by the name of a part', () => {
  let refused = 0;
  let answered = 0;
  fc.assert(
    fc.property(anyPlainCircuit, (file) => {
      const reading = readInstallation(JSON.stringify(file), 'any.yaml');
      if (!reading.ok) {
        for (const { message } of reading.diagnostics) expect(message.length).toBeGreaterThan(5);
        refused += 1;
        return;
      }
      const build = compile(reading.installation);
      try {
        const timeline = run(build, initialConditions(reading.installation));
        for (const { solution, harmonics = [] } of timeline.intervals)
          for (const { volts, amperes } of [solution, ...harmonics.map((harmonic) => harmonic.solution)])
            for (const values of [volts.re, volts.im, amperes.re, amperes.im])
              expect(values.every(Number.isFinite)).toBe(true);
        const told = account(timeline, 'iec', telling(timeline));
        expect([told.headline, ...told.why, ...told.story.map(({ text }) => text)].join(' ')).not.toMatch(
          /NaN|undefined/,
        );
        answered += 1;
      } catch (error) {
        expect(error).toBeInstanceOf(RangeError);
        expect(String(error)).toMatch(/"(part|two|node|first)[^"]*"/);
        refused += 1;
      }
    }),
    { numRuns: 300, seed: 20_261_125 },
  );
  expect(answered).toBeGreaterThan(5 * refused);
});
