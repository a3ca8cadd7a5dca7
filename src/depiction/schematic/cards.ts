import { label, quantity, say, type Vocabulary } from '../../explain/index.ts';
import type { Build, Part } from '../../installation/index.ts';
import type { Interval } from '../../scenario/index.ts';
import type { Box as Rect } from '../depiction.ts';
import { LEAST_A } from '../flow.ts';
import { levelOf } from '../halos.ts';
import { nameLines } from './graph.ts';
import { middle } from './middle.ts';
import type { Sheet } from './sheet.ts';

/** A box on the sheet with its words. */
export interface CardView {
  readonly part: string;
  readonly rect: Rect;
  /** Name in lines, to stand over the box. */
  readonly name: readonly string[];
  /** What it carries, its volts, or its state; empty if there is nothing to say. */
  readonly figure: string;
  /** Amperes of the figure, as solved, where it is one. */
  readonly amperes?: number;
  readonly level: 'none' | '25' | '50';
  readonly faint: boolean;
  readonly shape: 'card' | 'cable' | 'foot' | 'person';
  readonly reaction: 'calm' | 'startled' | 'held' | 'fallen';
}

/** Where each part lies: its box, what stands at its foot, or the symbol in the box of another. */
export function rectsOf(sheet: Sheet, build: Build): ReadonlyMap<string, Rect> {
  const found = new Map<string, Rect>();
  for (const { at: where, part } of sheet.feet)
    if (part !== undefined) found.set(part, { x: where.x - 50, y: where.y - 6, width: 100, height: 104 });
  for (const { box, card } of sheet.placed)
    if (box.unit.part !== undefined && box.unit.form !== 'electrode')
      found.set(box.unit.part, { x: card.x, y: card.y + box.head, width: card.width, height: card.height - box.head });
  for (const { part, route, symbol } of sheet.stretches)
    if (symbol !== undefined && part in build.installation.parts && !found.has(part)) {
      const { at: spot } = middle(route);
      found.set(part, { x: spot.x - 18, y: spot.y - 18, width: 36, height: 36 });
    }
  for (const { box, card } of sheet.placed)
    if (box.unit.part !== undefined && !found.has(box.unit.part)) found.set(box.unit.part, card);
  return found;
}

/** Every part as it is now, with its words and figure. */
export function cardsOf(
  sheet: Sheet,
  build: Build,
  interval: Interval,
  metal: ReadonlyMap<string, number>,
  reaction: CardView['reaction'],
  vocabulary: Vocabulary,
): readonly CardView[] {
  const first = build.people[0]?.name;
  const card = (part: string, rect: Rect, shape: CardView['shape']): CardView => {
    const volts = metal.get(part);
    const level = levelOf(volts ?? 0);
    const state = interval.devices.find(({ device }) => device === part)?.state;
    const most = mostAmperes(part, build, interval);
    const figure =
      state === 'open' || state === 'warning' || state === 'not fitted'
        ? say(
            state === 'open' ? 'detail.open' : state === 'warning' ? 'detail.warning' : 'detail.not-fitted',
            vocabulary,
          )
        : level !== 'none'
          ? quantity(volts ?? 0, 'V')
          : most >= LEAST_A
            ? quantity(most, 'A')
            : '';
    const isCurrent = figure !== '' && figure === quantity(most, 'A');
    return {
      part,
      rect,
      name: nameLines(label(part, vocabulary)),
      figure,
      ...(isCurrent ? { amperes: most } : {}),
      level: shape === 'foot' ? 'none' : level,
      faint: state === 'not fitted',
      shape,
      reaction: part === first ? reaction : 'calm',
    };
  };
  return [
    ...sheet.placed.flatMap(({ box: { unit, head, width, height }, card: { x, y } }): CardView[] =>
      unit.part === undefined || unit.form === 'electrode'
        ? []
        : [
            card(
              unit.part,
              { x, y: y + head, width, height: height - head },
              unit.form === 'person' ? 'person' : unit.kind === 'cable' ? 'cable' : 'card',
            ),
          ],
    ),
    ...sheet.feet.flatMap(({ part, at: { x, y } }): CardView[] =>
      part === undefined || isBoxed(build.installation.parts[part])
        ? []
        : [card(part, { x: x - 50, y: y + 40, width: 100, height: 60 }, 'foot')],
    ),
  ];
}

/** What has a box of its own beside what stands in the soil. */
function isBoxed(made: Part | undefined): boolean {
  return made?.kind === 'pipe' || made?.kind === 'structural-steel';
}

/** The largest current of a part's own branches; of a bar without any, nothing. */
function mostAmperes(part: string, build: Build, { solution }: Interval): number {
  const own = build.people.find(({ name }) => name === part)?.limbs.map(({ branch }) => branch);
  const branches =
    own ??
    build.branches.flatMap((info, i) =>
      info.part === part && info.role !== 'insulation' && !isJoin(info.name, build) ? [i] : [],
    );
  return Math.max(
    0,
    ...branches.map((branch) => Math.hypot(solution.amperes.re[branch] ?? 0, solution.amperes.im[branch] ?? 0)),
  );
}

const joined = new WeakMap<Build, ReadonlySet<string>>();

function isJoin(name: string, build: Build): boolean {
  const known = joined.get(build) ?? new Set(build.installation.joins.map(({ between: [a, b] }) => `${a} – ${b}`));
  joined.set(build, known);
  return known.has(name);
}
