import { readdirSync, readFileSync } from 'node:fs';
import Elk from 'elkjs/lib/elk.bundled.js';
import { describe, expect, it } from 'vitest';
import { planOf, schematic, sheetOf, type Laid, type Sheet } from '../../src/depiction/index.ts';
import { compile, initialConditions, type Build } from '../../src/installation/index.ts';
import { run } from '../../src/scenario/index.ts';
import { installationFrom } from '../installation/places.ts';

const folders = ['lessons/places', 'tests/reference/textbook', 'tests/reference/loops'];
const files = folders.flatMap((folder) =>
  readdirSync(folder).flatMap((file) => (file.endsWith('.yaml') ? [`${folder}/${file}`] : [])),
);
const built = (file: string): Build => compile(installationFrom(readFileSync(file, 'utf8')));

async function laid(build: Build): Promise<Sheet> {
  const plan = planOf(build);
  return sheetOf(plan, (await new Elk().layout(structuredClone(plan.graph))) as Laid);
}

/** The conditions as the place opens, and with every fault closed and everybody touching what they can. */
function worst(build: Build): Record<string, string> {
  const { conditions } = build.installation;
  const chosen = Object.entries(conditions).flatMap(([name, { kind, options }]) =>
    kind === 'insulation-fault'
      ? [[name, options[1] ?? '']]
      : kind === 'touching'
        ? [[name, options.at(-1) ?? '']]
        : [],
  );
  return { ...initialConditions(build.installation), ...(Object.fromEntries(chosen) as Record<string, string>) };
}

describe.each(files)('the schematic of %s', (file) => {
  it('gives every part a place of its own, and no box lies on another', async () => {
    const build = built(file);
    const sheet = await laid(build);
    const { hotspots } = schematic(sheet, run(build, worst(build)), 0, 'iec');
    expect(hotspots.map(({ id }) => id).toSorted()).toEqual(Object.keys(build.installation.parts).toSorted());
    for (const [i, one] of sheet.placed.entries())
      for (const other of sheet.placed.slice(i + 1)) {
        const [a, b] = [one.card, other.card];
        const apart = a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;
        expect(apart, `${one.box.unit.id} lies on ${other.box.unit.id}`).toBe(true);
      }
  });

  it('shows in every ribbon of one branch, and in every figure, the amperes that were solved', async () => {
    const build = built(file);
    const sheet = await laid(build);
    const timeline = run(build, worst(build));
    for (const interval of timeline.intervals) {
      const { re, im } = interval.solution.amperes;
      const solved = build.branches.map((_, branch) => Math.hypot(re[branch] ?? 0, im[branch] ?? 0));
      const { ribbons, cards } = schematic(sheet, timeline, interval.start_s, 'north-america');
      for (const { branches, amperes } of ribbons)
        if (branches.length === 1) expect(amperes).toBeCloseTo(solved[build.branch(branches[0] ?? '')] ?? NaN, 9);
      for (const { part, amperes } of cards) if (amperes !== undefined) expect(solved, part).toContain(amperes);
    }
  });
});

describe('the schematic of the bakery', () => {
  const build = built('lessons/places/bakery.yaml');

  it('is the same sheet whenever it is laid out', async () => {
    expect(JSON.stringify(await laid(build))).toBe(JSON.stringify(await laid(built('lessons/places/bakery.yaml'))));
  });

  it('obeys Kirchhoff wherever ribbons meet', async () => {
    const sheet = await laid(build);
    const { ribbons } = schematic(sheet, run(build, worst(build)), 0, 'iec');
    const sums = new Map<string, number>();
    for (const { route, inPhase_A } of ribbons)
      for (const [point, sign] of [
        [route[0], -1],
        [route.at(-1), 1],
      ] as const) {
        const spot = `${Math.round(point?.x ?? 0)} ${Math.round(point?.y ?? 0)}`;
        sums.set(spot, (sums.get(spot) ?? 0) + sign * inPhase_A);
      }
    for (const [spot, sum] of sums) expect(Math.abs(sum), spot).toBeLessThan(0.002);
  });

  it('opens the symbol of a breaker that has opened, and nothing flows in it any more', async () => {
    const sheet = await laid(build);
    const timeline = run(build, { ...initialConditions(build.installation), 'line touches the case': 'solid' });
    const after = schematic(sheet, timeline, timeline.intervals.at(-1)?.start_s ?? 0, 'north-america');
    expect(after.symbols.filter(({ open }) => open).map(({ part }) => part)).toEqual(['mixer breaker']);
    expect(after.ribbons.filter(({ branches }) => branches.includes('mixer breaker'))).toEqual([]);
    expect(after.spark).toBeUndefined();
  });

  it('breaks the wire of a third wire that is open', async () => {
    const timeline = run(build, { ...initialConditions(build.installation), 'protective conductor open': 'yes' });
    const broken = schematic(await laid(build), timeline, 0, 'iec').wires.filter((wire) => wire.broken);
    expect(broken.map(({ id }) => id)).toEqual(['mixer run.protective.load – outlet.protective']);
  });
});
