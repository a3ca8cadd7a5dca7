import { useMemo, useRef } from 'react';
import { BreakerChart, sampleBand, ZoneChart, type LogAxis } from '../charts/index.ts';
import { figure, label, name, quantity, say as sayIn, type StoryLine, type Vocabulary } from '../explain/index.ts';
import type { OvercurrentSettings } from '../protection/index.ts';
import type { Timeline } from '../scenario/index.ts';
import { useAccount } from './useAccount.ts';
import { useDesk, useSay, useVocabulary } from './useDesk.ts';
import { useSize } from './useSize.ts';

const TIMES_s = [0.01, 0.1, 1, 10, 60, 600, 7200];
const MULTIPLES = [1, 2, 5, 10, 20, 50];
const CURRENTS_A = [0.0001, 0.001, 0.01, 0.1, 1, 10];
const EXPOSURES_s = [0.01, 0.1, 1, 10];
/** Where the names of the zones are written: inside each, clear of the curves. */
const ZONES = [
  { name: 'AC-1', amperes: 0.00022, time_s: 1 },
  { name: 'AC-2', amperes: 0.0022, time_s: 0.3 },
  { name: 'AC-3', amperes: 0.022, time_s: 2.5 },
  { name: 'AC-4', amperes: 1.6, time_s: 1 },
] as const;

/** The breaker's band with this fault's point and the zones of the body with the person's, each with its table. */
export function Charts() {
  const say = useSay();
  const vocabulary = useVocabulary();
  const timeline = useDesk((desk) => desk.timeline);
  const { story } = useAccount();
  const breaker = useMemo(() => tellingBreaker(timeline, story), [timeline, story]);
  const person = useMemo(() => worstExposure(timeline), [timeline]);
  const box = useRef<HTMLDivElement>(null);
  const { width } = useSize(box);
  const up: LogAxis = { title: say('chart.time'), least: 0.005, most: 10_000, ticks: TIMES_s.map(seconds) };
  return (
    <div className="charts" ref={box}>
      {breaker && (
        <figure>
          <figcaption>{say('chart.breaker', { device: name(breaker.device, vocabulary) })}</figcaption>
          <BreakerChart
            settings={breaker.settings}
            point={breaker.point}
            title={say('chart.breaker', { device: name(breaker.device, vocabulary) })}
            pointLabel={breakerPoint(breaker, vocabulary)}
            across={{
              title: say('chart.multiple', { rating: quantity(breaker.settings.rating_A, 'A') }),
              least: 0.9,
              most: 60,
              ticks: MULTIPLES.map((at) => ({ at, label: `${figure(at)} ×` })),
            }}
            up={up}
            width={width}
          />
          <BreakerTable breaker={breaker} />
        </figure>
      )}
      <figure>
        <figcaption>{say('chart.zones')}</figcaption>
        <ZoneChart
          point={person}
          title={say('chart.zones')}
          pointLabel={person ? `${quantity(person.heart_A, 'A')}, ${duration(person.exposure_s, vocabulary)}` : ''}
          zones={ZONES}
          across={{
            title: say('chart.heart'),
            least: 0.0001,
            most: 10,
            ticks: CURRENTS_A.map((at) => ({ at, label: quantity(at, 'A') })),
          }}
          width={width}
          up={{ title: say('chart.time'), least: 0.01, most: 10, ticks: EXPOSURES_s.map(seconds) }}
        />
        <p>
          {person
            ? say('chart.person', {
                person: label(person.person, vocabulary),
                amperes: quantity(person.heart_A, 'A'),
                time: duration(person.exposure_s, vocabulary),
                zone: person.zone,
              })
            : say('chart.nobody')}
        </p>
      </figure>
    </div>
  );
}

function BreakerTable({ breaker }: { readonly breaker: Breaker }) {
  const say = useSay();
  const vocabulary = useVocabulary();
  return (
    <table className="chart-table">
      <thead>
        <tr>
          <th scope="col">{say('table.amperes')}</th>
          <th scope="col">{say('chart.earliest')}</th>
          <th scope="col">{say('chart.latest')}</th>
        </tr>
      </thead>
      <tbody>
        {MULTIPLES.map((multiple) => {
          const [at] = sampleBand(breaker.settings, multiple, multiple);
          return (
            <tr key={multiple}>
              <th scope="row">{`${figure(multiple)} ×, ${quantity(multiple * breaker.settings.rating_A, 'A')}`}</th>
              <td>{duration(at?.earliest_s ?? Infinity, vocabulary)}</td>
              <td>{duration(at?.latest_s ?? Infinity, vocabulary)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

interface Breaker {
  readonly device: string;
  readonly settings: OvercurrentSettings;
  readonly point: { readonly multiple: number; readonly at_s: number };
}

/** Of the breakers that the story tells of the one that carries most for what it is built for; where it tells of none, of all. */
function tellingBreaker({ build, intervals, conditions }: Timeline, story: readonly StoryLine[]): Breaker | undefined {
  const told = new Set(
    story.flatMap(({ finding }) =>
      finding.kind === 'device-sees' || finding.kind === 'device-operated' ? [finding.device] : [],
    ),
  );
  const interval = intervals[1] ?? intervals[0];
  const candidates = build.devices.flatMap((device): Breaker[] => {
    const settings = device.settings(conditions);
    const moment = interval?.devices.find((one) => one.device === device.name);
    if (!moment || !('rating_A' in settings)) return [];
    const { operation } = moment;
    return [{ device: device.name, settings, point: { multiple: operation.multiple, at_s: operation.at_s } }];
  });
  const ordered = candidates.toSorted((a, b) => b.point.multiple - a.point.multiple);
  return ordered.find(({ device }) => told.has(device)) ?? ordered[0];
}

function worstExposure({ intervals }: Timeline) {
  const touched = intervals.flatMap(({ people }) => people.filter(({ heart_A }) => heart_A > 0));
  const last = touched[touched.length - 1];
  if (!last) return null;
  const heart_A = Math.max(...touched.map((moment) => moment.heart_A));
  return { person: last.person, zone: last.zone, heart_A, exposure_s: last.exposure_s };
}

function breakerPoint({ point }: Breaker, vocabulary: Vocabulary): string {
  return `${figure(point.multiple)} ×, ${duration(point.at_s, vocabulary)}`;
}

function duration(time_s: number, vocabulary: Vocabulary): string {
  return Number.isFinite(time_s) ? quantity(time_s, 's') : sayIn('account.never', vocabulary);
}

function seconds(at: number): { readonly at: number; readonly label: string } {
  return { at, label: quantity(at, 's') };
}
