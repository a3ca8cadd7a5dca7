import fc from 'fast-check';
import { expect, test } from 'vitest';
import { layTrack, standAt, stretch } from '../../src/scene/track.ts';

const anyRoute = fc.array(fc.record({ x: fc.integer({ min: 0, max: 1600 }), y: fc.integer({ min: 0, max: 824 }) }), {
  minLength: 2,
  maxLength: 8,
});

test('a rounded track begins and ends where its route does and is never longer', () => {
  fc.assert(
    fc.property(anyRoute, (route) => {
      const track = layTrack(route, 15);
      const straight = route.reduce(
        (sum, { x, y }, i) => sum + (i === 0 ? 0 : Math.hypot(x - (route[i - 1]?.x ?? x), y - (route[i - 1]?.y ?? y))),
        0,
      );
      expect([track.xy[0], track.xy[1]]).toEqual([route[0]?.x, route[0]?.y]);
      expect([track.xy.at(-2), track.xy.at(-1)]).toEqual([route.at(-1)?.x, route.at(-1)?.y]);
      expect(track.length).toBeLessThanOrEqual(straight + 1e-6);
    }),
    { seed: 41 },
  );
});

test('an L of 100 and 50 with a corner of 10 is shorter by what the corner cuts', () => {
  const route = [
    { x: 0, y: 0 },
    { x: 100, y: 0 },
    { x: 100, y: 50 },
  ];
  const { length } = layTrack(route, 10);
  expect(length).toBeGreaterThan(150 - 2 * 10 + Math.hypot(10, 10));
  expect(length).toBeLessThan(150 - 2 * 10 + 20);
});

test('standing half way along a straight line is in its middle and points along it', () => {
  const track = layTrack([{ x: 0, y: 0 }, { x: 60, y: 80 }], 5); // prettier-ignore
  expect(standAt(track, 50, { x: 0, y: 0, angle: 0 })).toEqual({ x: 30, y: 40, angle: Math.atan2(80, 60) });
  expect(standAt(track, 500, { x: 0, y: 0, angle: 0 })).toMatchObject({ x: 60, y: 80 });
});

test('two neighbouring stretches make up the whole', () => {
  fc.assert(
    fc.property(anyRoute, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (route, share) => {
      const track = layTrack(route, 15);
      fc.pre(track.length > 1);
      const lengthOf = (xy: readonly number[]) =>
        xy.reduce(
          (sum, value, i) =>
            i < 2 || i % 2 === 1
              ? sum
              : sum + Math.hypot(value - (xy[i - 2] ?? 0), (xy[i + 1] ?? 0) - (xy[i - 1] ?? 0)),
          0,
        );
      const cut = share * track.length;
      expect(lengthOf(stretch(track, 0, cut)) + lengthOf(stretch(track, cut, track.length))).toBeCloseTo(
        track.length,
        6,
      );
      expect(stretch(track, cut, cut)).toEqual([]);
    }),
    { seed: 42 },
  );
});
