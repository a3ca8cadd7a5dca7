import { describe, expect, test } from 'vitest';
import { placeLabels } from '../../src/app/placeLabels.ts';
import { placePlates, plateLines } from '../../src/app/placePlates.ts';
import { openDesk, step } from '../../src/app/desk.ts';
import { depict } from '../../src/depiction/index.ts';
import { bakery } from './place.ts';

const faulted = step(openDesk(bakery), {
  kind: 'choose',
  condition: 'line touches the case',
  option: 'solid',
}).timeline;
const WORLD = { width: 1600, height: 824 };
const GLYPH_em = 0.54;

/** The room plates take, measured as the browser will. */
function boxes(width: number, font: number) {
  const { hotspots } = depict(faulted, 0, 'north-america');
  const scale = width / WORLD.width;
  const view = { scale, x: 0, y: 0, width, height: WORLD.height * scale };
  const placed = placePlates(hotspots, view, view, font);
  return [...placed].map(([id, { x, y, detail }]) => {
    const spot = hotspots.find((one) => one.id === id);
    const lines = [spot?.name ?? '', ...(detail ? plateLines(spot?.detail ?? '') : [])];
    const wide = Math.max(...lines.map((line) => line.length)) * GLYPH_em * font;
    return {
      id,
      left: x - wide / 2,
      right: x + wide / 2,
      top: y - lines.length * font * 0.6,
      bottom: y + lines.length * font * 0.6,
    };
  });
}

describe.each([
  [580, 13],
  [880, 13],
  [1330, 22],
])('name plates on a stage of %i px with words of %i px', (width, font) => {
  test('never lie on one another and stay inside the stage', () => {
    const all = boxes(width, font);
    expect(all.length).toBeGreaterThan(4);
    for (const one of all) {
      expect(one.left, one.id).toBeGreaterThanOrEqual(0);
      expect(one.right, one.id).toBeLessThanOrEqual(width);
      for (const other of all.filter(({ id }) => id > one.id)) {
        const apart =
          one.right <= other.left || other.right <= one.left || one.bottom <= other.top || other.bottom <= one.top;
        expect(apart, `${one.id} and ${other.id}`).toBe(true);
      }
    }
  });

  test('show the case that is live', () => {
    expect(boxes(width, font).map(({ id }) => id)).toContain('mixer');
  });
});

test('a long statement on a plate is parted at its first comma', () => {
  expect(plateLines('40.8 V above the floor, running, 2.28 A')).toEqual(['40.8 V above the floor', 'running, 2.28 A']);
  expect(plateLines('')).toEqual([]);
});

describe('the words over the strip of time', () => {
  const { strip } = depict(faulted, 0, 'north-america');
  test.each([340, 640, 1200])('keep clear of one another in %i px', (width) => {
    const labels = placeLabels(strip.marks, width, 13);
    expect(labels.length).toBeGreaterThan(1);
    for (const row of [0, 1]) {
      const ends = labels
        .filter((label) => label.row === row)
        .map(({ left, label }) => [left, left + label.length * 13 * 0.54] as const);
      ends.forEach(([left], index) =>
        expect(left).toBeGreaterThanOrEqual(index === 0 ? 0 : (ends[index - 1]?.[1] ?? 0)),
      );
    }
  });
});
