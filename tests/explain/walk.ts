import type { Conditions } from '../../src/installation/index.ts';
import type { Timeline } from '../../src/scenario/index.ts';
import { bakery, runBakery } from '../scenario/bakery.ts';
import { chance } from '../scenario/anyCase.ts';

/** Conditions of the bakery: each alone, then many drawn at random with about half of everything changed; the same every time. */
function manyConditions(drawn: number): readonly Conditions[] {
  const all = Object.entries(bakery.installation.conditions);
  const single = all.flatMap(([name, { options }]) => options.map((option): Conditions => ({ [name]: option })));
  const next = chance(20251125);
  const mixed = Array.from({ length: drawn }, (): Conditions =>
    Object.fromEntries(
      all.flatMap(([name, { options }]) => {
        const option = options[Math.floor(next() * options.length)];
        return next() < 0.5 && option !== undefined ? [[name, option] as const] : [];
      }),
    ),
  );
  // Without a fault little happens: two of three get one.
  const faults = ['solid', 'solid', '1 ohm', '100 ohm'];
  const struck = mixed.map((conditions, index) =>
    index % 3 === 0 ? conditions : { ...conditions, 'line touches the case': faults[index % faults.length] ?? 'solid' },
  );
  return [{}, ...single, ...struck];
}

/** Runs of the bakery under many conditions, a third each with fast, middle and slow devices. */
export function manyRuns(drawn: number): readonly Timeline[] {
  const tolerances = ['middle', 'fast', 'slow'] as const;
  return manyConditions(drawn).map((conditions, index) =>
    runBakery(conditions, { tolerance: tolerances[index % tolerances.length] ?? 'middle' }),
  );
}
