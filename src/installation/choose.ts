import type { Conditions } from './conditions.ts';
import type { Installation } from './installation.ts';
import { nearest } from './nearest.ts';

/** What came of choosing: all conditions, or what could not be understood and what to write instead. */
export type ChosenConditions =
  | { readonly ok: true; readonly conditions: Conditions }
  | {
      readonly ok: false;
      readonly problems: readonly { readonly written: string; readonly message: string; readonly instead?: string }[];
    };

/** The option of every condition when the place opens: as it should be, with what runs running. */
export function initialConditions(installation: Installation): Conditions {
  return Object.fromEntries(
    Object.entries(installation.conditions).map(([name, { initially, options }]) => [
      name,
      initially ?? options[0] ?? 'no',
    ]),
  );
}

/** Conditions by what somebody wrote: `loose joint`, `loose joint=no`, `line touches the case=1 ohm`; all others as they are initially.
 *  A condition without an option gets its second: a switch is on, a fault is the first of its kinds. */
export function setConditions(installation: Installation, assignments: readonly string[]): ChosenConditions {
  const conditions: Record<string, string> = { ...initialConditions(installation) };
  const problems: { written: string; message: string; instead?: string }[] = [];
  for (const written of assignments) {
    const equals = written.indexOf('=');
    const name = (equals < 0 ? written : written.slice(0, equals)).trim();
    const condition = Object.hasOwn(installation.conditions, name) ? installation.conditions[name] : undefined;
    if (condition === undefined) {
      const names = Object.keys(installation.conditions);
      const meant = nearest(name, names);
      problems.push({
        written,
        message: `there is no condition "${name.slice(0, 60)}"`,
        instead: meant === undefined ? names.join(' | ') : `${meant}${equals < 0 ? '' : written.slice(equals)}`,
      });
      continue;
    }
    const option = equals < 0 ? (condition.options[1] ?? condition.options[0] ?? '') : written.slice(equals + 1).trim();
    if (condition.options.includes(option)) conditions[name] = option;
    else {
      const meant = nearest(option, condition.options);
      problems.push({
        written,
        message: `"${name}" has no option "${option.slice(0, 60)}"; it has ${condition.options.join(', ')}`,
        instead: `${name}=${meant ?? condition.options[1] ?? condition.options[0] ?? ''}`,
      });
    }
  }
  return problems.length === 0 ? { ok: true, conditions } : { ok: false, problems };
}
