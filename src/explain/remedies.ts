import type { Zone } from '../body/index.ts';
import type { Conditions } from '../installation/index.ts';
import { run, type Timeline } from '../scenario/index.ts';
import { disconnectionLimit_s, nominal_V, struckInterval } from './faultState.ts';
import type { Finding } from './finding.ts';
import { findings } from './findings.ts';
import { LIVE_V, TOUCH_LIMIT_V } from './metal.ts';

const DANGEROUS: readonly Zone[] = ['AC-4.1', 'AC-4.2', 'AC-4.3'];

/** Metal at 25 V to 50 V must be dead within this time, s: what IEC 60364-4-41:2005 411.3.2.3 allows a distribution circuit. */
const DISTRIBUTION_S = 5;

/** Whether a run ends well: nobody reaches zone AC-4.1, metal at 50 V or more is dead within the disconnection time
 *  (IEC 60364-4-41 table 41.1, TN), metal at 25 V within 5 s, and in ordinary work nothing is live, no current strays and
 *  the two halves of a split supply stand even. */
export function isSafe(timeline: Timeline): boolean {
  const found = findings(timeline);
  const first = timeline.intervals[0];
  const hurt = timeline.intervals.some(({ people }) => people.some(({ zone }) => DANGEROUS.includes(zone)));
  const limit_s = first === undefined ? 0 : disconnectionLimit_s(nominal_V(timeline.build, first));
  return (
    !hurt &&
    found.every((finding) => {
      if (finding.kind === 'leg-volts') return false;
      if (finding.kind === 'stray-current') return finding.at_s >= 0;
      if (finding.kind !== 'live-metal' || finding.volts < LIVE_V) return true;
      return finding.until_s - finding.at_s <= (finding.volts >= TOUCH_LIMIT_V ? limit_s : DISTRIBUTION_S);
    })
  );
}

/** What would have made it safe: each single restoring change of a path or a device, and a residual device where none is
 *  fitted, is run and judged. Costs one run for each; empty where nothing is unsafe. */
export function remedies(timeline: Timeline): readonly Finding[] {
  const at_s = timeline.intervals.at(-1)?.start_s ?? 0;
  if (isSafe(timeline)) return struckInterval(timeline) === undefined ? [] : [{ kind: 'already-safe', at_s }];
  const changes = restoring(timeline);
  const working = changes.flatMap((change): Finding[] => {
    const [condition, option] = change;
    const conditions: Conditions = { ...timeline.conditions, [condition]: option };
    const { build, tolerance, horizon_s } = timeline;
    const after = run(build, conditions, { tolerance, horizon_s });
    if (!isSafe(after)) return [];
    const opened = after.intervals.find(({ because }) => because.kind === 'device-operated');
    return [
      {
        kind: 'made-safe-by',
        at_s,
        condition,
        option,
        ...(opened?.because.kind === 'device-operated'
          ? { device: opened.because.device, opened_s: opened.start_s }
          : {}),
      },
    ];
  });
  return working.length > 0 ? working : [{ kind: 'none-alone', at_s, tried: changes.length }];
}

function restoring({ build, conditions }: Timeline): readonly (readonly [string, string])[] {
  return Object.entries(build.installation.conditions).flatMap(([name, { kind, group, options }]) => {
    const [usual, other] = options;
    const chosen = conditions[name] ?? usual;
    if (usual === undefined || other === undefined) return [];
    if (kind === 'fitted') return chosen === usual ? [[name, other] as const] : [];
    const repairable = group === 'path' || group === 'device';
    return repairable && chosen !== usual ? [[name, usual] as const] : [];
  });
}
