import './sweep.css';
import { useId, useMemo, useState } from 'react';
import { figure, name, numbersOf, quantity, saySweep, type Axis, type SweepPoint } from '../explain/index.ts';
import type { Crowd } from './sweep.worker.ts';
import { useDesk, useVocabulary } from './useDesk.ts';
import { useSweep } from './useSweep.ts';

const STEPS = 21;
const PEOPLE = 1_000_000;

/** Any value of the file over a range, and a million people at the live metal: computed beside the page, told as tables. */
export function Sweep() {
  const vocabulary = useVocabulary();
  const say = (key: Parameters<typeof saySweep>[0], values?: Parameters<typeof saySweep>[2]) =>
    saySweep(key, vocabulary, values);
  const { build, conditions } = useDesk((desk) => desk.timeline);
  const numbers = useMemo(() => numbersOf(build.installation), [build]);
  const [path, setPath] = useState(numbers[0]?.path ?? '');
  const value = numbers.find((one) => one.path === path)?.value ?? 0;
  const [range, setRange] = useState<readonly [number, number]>();
  const [from, to] = range ?? [value / 2, value * 2];
  const [swept, setSwept] = useState<Axis>();
  const { share, answer, start, cancel } = useSweep();
  const id = useId();
  const task = { installation: build.installation, conditions, people: PEOPLE };
  const axis: Axis = { path, from, to, steps: STEPS };
  return (
    <div className="sweep">
      <form
        className="sweep-form"
        onSubmit={(event) => {
          event.preventDefault();
          setSwept(axis);
          start({ ...task, axis });
        }}
      >
        <label htmlFor={`${id} value`}>{say('value')}</label>
        <select
          id={`${id} value`}
          value={path}
          onChange={(event) => {
            setPath(event.currentTarget.value);
            setRange(undefined);
          }}
        >
          {numbers.map((one) => (
            <option key={one.path}>{one.path}</option>
          ))}
        </select>
        <Number label={say('from')} value={from} onChange={(next) => setRange([next, to])} />
        <Number label={say('to')} value={to} onChange={(next) => setRange([from, next])} />
        <button type="submit" className="plain">
          {say('run')}
        </button>
        <button type="button" className="plain" onClick={() => start(task)}>
          {say('crowd')}
        </button>
      </form>
      {share !== undefined && (
        <p>
          <progress max={1} value={share} aria-label={say('progress')} />{' '}
          <button type="button" className="plain" onClick={cancel}>
            {say('cancel')}
          </button>
        </p>
      )}
      <div aria-live="polite">
        {answer?.kind === 'failed' && <p>{say('failed', { reason: answer.reason })}</p>}
        {answer?.kind === 'points' && swept && <Points points={answer.points} axis={swept} say={say} />}
        {answer?.kind === 'crowd' &&
          (answer.crowd ? (
            <Shares crowd={answer.crowd} say={say} part={name(answer.crowd.part, vocabulary)} />
          ) : (
            <p>{say('crowd.none')}</p>
          ))}
      </div>
    </div>
  );
}

type Say = (key: Parameters<typeof saySweep>[0], values?: Parameters<typeof saySweep>[2]) => string;

function Number(props: { readonly label: string; readonly value: number; readonly onChange: (next: number) => void }) {
  const id = useId();
  return (
    <>
      <label htmlFor={id}>{props.label}</label>
      <input
        id={id}
        type="number"
        step="any"
        value={props.value}
        onChange={(event) => {
          const next = event.currentTarget.valueAsNumber;
          if (!isNaN(next)) props.onChange(next);
        }}
      />
    </>
  );
}

function Points({
  points,
  axis,
  say,
}: {
  readonly points: readonly SweepPoint[];
  readonly axis: Axis;
  readonly say: Say;
}) {
  const touched = points.some(({ body_A }) => body_A > 0);
  const columns: readonly (readonly [string, (point: SweepPoint) => string])[] = [
    [say('opens'), ({ opens_s }) => (opens_s < Infinity ? quantity(opens_s, 's') : say('never'))],
    [say('fault'), ({ fault_A }) => quantity(fault_A, 'A')],
    [say('metal'), ({ metal_V }) => quantity(metal_V, 'V')],
    ...(touched
      ? ([
          [say('body'), ({ body_A }: SweepPoint) => quantity(body_A, 'A')],
          [say('zone'), ({ zone }: SweepPoint) => zone.replace('-', '\u2011')],
        ] as const)
      : []),
    [say('safe'), ({ safe }) => say(safe ? 'yes' : 'no')],
  ];
  return (
    <table className="chart-table">
      <caption>{say('caption', { path: axis.path, from: figure(axis.from), to: figure(axis.to) })}</caption>
      <thead>
        <tr>
          <th scope="col">{say('value')}</th>
          {columns.map(([head]) => (
            <th scope="col" key={head}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {points.map((point) => (
          <tr key={point.values[0]}>
            <th scope="row">{figure(point.values[0] ?? 0)}</th>
            {columns.map(([head, cell]) => (
              <td key={head}>{cell(point)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Shares({ crowd, part, say }: { readonly crowd: Crowd; readonly part: string; readonly say: Say }) {
  const { outcome, volts } = crowd;
  const percent = (share: number) => `${figure(share * 100)}\u00a0%`;
  const rows = [
    ...outcome.zones.map(({ zone, share }) => [zone, percent(share)] as const),
    [say('crowd.held'), percent(outcome.held)] as const,
    ...outcome.quantiles.map(
      ({ share, amperes }) => [say('crowd.below', { share: percent(share) }), quantity(amperes, 'A')] as const,
    ),
  ];
  return (
    <>
      <table className="chart-table">
        <caption>
          {say('crowd.caption', { people: outcome.people.toLocaleString('en'), part, volts: quantity(volts, 'V') })}
        </caption>
        <tbody>
          {rows.map(([what, told]) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td>{told}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">{say('crowd.note')}</p>
    </>
  );
}
