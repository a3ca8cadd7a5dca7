import { account, findings, ledger, type Finding, type Vocabulary } from '../explain/index.ts';
import type { Build } from '../installation/index.ts';
import type { Interval, Timeline } from '../scenario/index.ts';
import { story } from '../explain/index.ts';

/** Everything about a run as plain data; what never ends or never happens is Infinity here and null in JSON. */
export function resultOf(
  timeline: Timeline,
  file: string,
  vocabulary: Vocabulary,
  remedies: readonly Finding[],
): object {
  const { build, conditions, intervals, tolerance, horizon_s } = timeline;
  const told = account(timeline, vocabulary);
  const found = [...findings(timeline), ...remedies];
  return {
    ohmward: 1,
    file,
    place: build.installation.place,
    region: build.installation.region,
    frequency_Hz: build.installation.frequency_Hz,
    vocabulary,
    tolerance,
    until_s: horizon_s,
    conditions,
    devices: build.devices.map(({ name, kind }) => ({ device: name, kind, ...outcomeOf(timeline, name) })),
    intervals: intervals.map((interval, index) => intervalOf(timeline, build, interval, index, vocabulary)),
    findings: found,
    words: {
      headline: told.headline,
      why: told.why,
      story: story(build, found, vocabulary).map(({ at_s, text }) => ({ at_s, text })),
      cautions: told.cautions,
    },
  };
}

/** How a device ended, and when and why it operated if it did. */
function outcomeOf({ intervals }: Timeline, device: string): object {
  const index = intervals.findIndex(({ because }) => because.kind === 'device-operated' && because.device === device);
  const opened = intervals[index];
  const state = intervals.at(-1)?.devices.find((moment) => moment.device === device)?.state;
  if (opened === undefined || opened.because.kind !== 'device-operated') return { state, operated: null };
  const saw = intervals[index - 1]?.devices.find((moment) => moment.device === device);
  return {
    state,
    operated: {
      at_s: opened.start_s,
      amperes: saw?.amperes ?? 0,
      ...(saw?.residual_A === undefined ? {} : { residual_A: saw.residual_A }),
      operation: opened.because.operation,
    },
  };
}

function intervalOf(
  timeline: Timeline,
  build: Build,
  interval: Interval,
  index: number,
  vocabulary: Vocabulary,
): object {
  const { start_s, end_s, because, conditions, solution, devices, people } = interval;
  const division = ledger(timeline, index, vocabulary);
  return {
    start_s,
    end_s,
    because,
    conditions,
    branches: build.branches.map(({ name, part, role }, branch) => {
      const { magnitude, degrees } = phasor(solution.amperes.re[branch], solution.amperes.im[branch]);
      return { name, part, role, amperes: magnitude, degrees };
    }),
    ...(interval.harmonics === undefined
      ? {}
      : {
          harmonics: interval.harmonics.map((harmonic) => ({
            order: harmonic.order,
            branches: build.branches.map(({ name }, branch) => {
              const { re, im } = harmonic.solution.amperes;
              const { magnitude, degrees } = phasor(re[branch], im[branch]);
              return { name, amperes: magnitude, degrees };
            }),
          })),
        }),
    nodes: build.network.nodes.map((name, node) => {
      const { magnitude, degrees } = phasor(solution.volts.re[node], solution.volts.im[node]);
      return { name, volts: magnitude, degrees };
    }),
    people,
    devices,
    paths:
      division === null
        ? null
        : {
            ...division,
            ways: division.ways.map((way) => ({
              ...way,
              branches: way.branches.map((b) => build.branches[b]?.name ?? ''),
            })),
          },
  };
}

function phasor(re = 0, im = 0): { readonly magnitude: number; readonly degrees: number } {
  return { magnitude: Math.hypot(re, im), degrees: (Math.atan2(im, re) * 180) / Math.PI };
}
