import { expect, test } from 'vitest';
import { INK } from '../../src/scene/ink.ts';

/** Relative luminance and contrast ratio (WCAG 2.2, definitions). */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const value = parseInt(colour.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].toSorted((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

const SHEET = { day: '#FCF9F2', dark: '#20252F' } as const;
const THEMES = ['day', 'dark'] as const;

test('every current reaches 4.5:1 on a sheet of its theme', () => {
  for (const theme of THEMES)
    for (const [kind, colour] of Object.entries(INK[theme].current))
      expect(contrast(colour, SHEET[theme]), `${theme} ${kind}`).toBeGreaterThanOrEqual(4.5);
});

test('marks stand out from their ribbon by 3:1 at least (WCAG 2.2, 1.4.11)', () => {
  for (const theme of THEMES) {
    const { current, chevron, core, casing } = INK[theme];
    expect(contrast(chevron.load, current.load), `${theme} load`).toBeGreaterThanOrEqual(3);
    expect(contrast(chevron.fault, current.fault), `${theme} fault`).toBeGreaterThanOrEqual(3);
    expect(contrast(chevron.person, core), `${theme} person`).toBeGreaterThanOrEqual(3);
    expect(contrast(current.stray, casing), `${theme} stray`).toBeGreaterThanOrEqual(3);
  }
});

test('the hazard hatch is told from its paper', () => {
  for (const theme of THEMES)
    expect(contrast(INK[theme].hatch, INK[theme].hatchPaper), theme).toBeGreaterThanOrEqual(3);
});
