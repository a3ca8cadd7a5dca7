import { compile, type Build, type Conditions } from '../../installation/index.ts';
import { conductorFor } from '../verdicts/conductorLimits.ts';
import { rating } from '../verdicts/circuit.ts';
import { guarded } from './guarded.ts';

/** One thing that can be done: a condition chosen otherwise (a wire fitted, a link taken out, a device exchanged), or a cable
 *  exchanged for a larger one. */
export type Repair =
  | { readonly kind: 'condition'; readonly condition: string; readonly option: string }
  | { readonly kind: 'conductor'; readonly cable: string; readonly size: string };

/** An installation and what is the matter with it. */
export interface Case {
  readonly build: Build;
  readonly conditions: Conditions;
}

/** Everything this place offers: each departing condition of the wiring and the devices put right, each missing device
 *  fitted, and each cable that is too thin for the device before it exchanged. The fault itself stays: an installation must
 *  meet it. */
export function repairsOf({ build, conditions }: Case): readonly Repair[] {
  const chosen = Object.entries(build.installation.conditions).flatMap(([condition, made]): readonly Repair[] => {
    const { kind, group, options } = made;
    const [usual, other] = options;
    const now = conditions[condition] ?? usual;
    if (usual === undefined || (group !== 'path' && group !== 'device')) return [];
    if (kind === 'fitted')
      return now === usual && other !== undefined ? [{ kind: 'condition', condition, option: other }] : [];
    return now === usual ? [] : [{ kind: 'condition', condition, option: usual }];
  });
  const larger = guarded(build).flatMap(({ cable, device, most_A, lineSize }): readonly Repair[] => {
    const rating_A = rating(device, conditions) ?? 0;
    const size = rating_A <= most_A ? undefined : conductorFor(lineSize, rating_A);
    return size === undefined ? [] : [{ kind: 'conductor', cable, size }];
  });
  return [...chosen, ...larger];
}

/** The case after these repairs. An exchanged cable is compiled anew, once. */
export function repaired({ build, conditions }: Case, repairs: readonly Repair[]): Case {
  const chosen: Record<string, string> = { ...conditions };
  let made = build;
  for (const repair of repairs)
    if (repair.kind === 'condition') chosen[repair.condition] = repair.option;
    else made = withLarger(made, repair.cable, repair.size);
  return { build: made, conditions: chosen };
}

const exchanged = new WeakMap<Build, Map<string, Build>>();

function withLarger(build: Build, cable: string, size: string): Build {
  const known = exchanged.get(build) ?? new Map<string, Build>();
  exchanged.set(build, known);
  const key = `${cable}: ${size}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const part = build.installation.parts[cable];
  if (part?.kind !== 'cable') throw new RangeError(`withLarger: "${cable}" is no cable`);
  // All its cores are drawn anew, so that the protective one grows with the line.
  const cores = Object.fromEntries(
    Object.entries(part.cores).map(([core, written]) => [core, typeof written === 'string' ? size : written]),
  );
  const parts = { ...build.installation.parts, [cable]: { ...part, cores } };
  const compiled = compile({ ...build.installation, parts });
  known.set(key, compiled);
  return compiled;
}
