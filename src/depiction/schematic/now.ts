import type { Build, Condition } from '../../installation/index.ts';
import type { Interval } from '../../scenario/index.ts';

/** Branches that are not there now: a fault that has not happened, an end that was moved away, a limb that touches nothing. */
export function absent(build: Build, { conditions, people }: Interval): ReadonlySet<number> {
  const gone = new Set<number>();
  const chosen = (name: string, condition: Condition): boolean =>
    (conditions[name] ?? condition.options[0]) !== condition.options[0];
  build.branches.forEach(({ condition }, branch) => {
    const what = condition === undefined ? undefined : build.installation.conditions[condition];
    if (what !== undefined && condition !== undefined && !chosen(condition, what)) gone.add(branch);
  });
  for (const [name, condition] of Object.entries(build.installation.conditions)) {
    if (!chosen(name, condition)) continue;
    const ends = condition.kind === 'swap' ? condition.ends : condition.kind === 'move' ? [condition.end] : [];
    build.installation.joins.forEach(({ between }) => {
      const leaves =
        ends.some((end) => between.includes(end)) && (condition.kind !== 'move' || between.includes(condition.from));
      if (leaves) gone.add(build.branch(`${between[0]} – ${between[1]}`));
    });
  }
  for (const { name, limbs } of build.people) {
    const touching = people.find(({ person }) => person === name)?.touching ?? [];
    for (const { limb, branch } of limbs) if (!touching.includes(limb)) gone.add(branch);
  }
  return gone;
}

/** Branches that a condition has interrupted or loosened. */
export function marksOf(
  build: Build,
  { conditions }: Interval,
): { readonly broken: ReadonlySet<string>; readonly loose: ReadonlySet<string> } {
  const broken = new Set<string>();
  const loose = new Set<string>();
  for (const [name, condition] of Object.entries(build.installation.conditions)) {
    if ((condition.kind !== 'open' && condition.kind !== 'loose') || conditions[name] !== 'yes') continue;
    const [a = '', b = ''] = condition.between ?? [];
    const marked = condition.kind === 'open' ? broken : loose;
    for (const branch of condition.at === undefined ? [`${a} – ${b}`, `${b} – ${a}`] : [condition.at])
      marked.add(branch);
  }
  return { broken, loose };
}
