import { memo, useEffect, useMemo, useRef } from 'react';
import { stripPosition, stripTime, type Strip } from '../depiction/index.ts';
import { quantity } from '../explain/index.ts';
import { placeLabels } from './placeLabels.ts';
import { neighbours, PACES } from './playhead.ts';
import { useDepiction } from './useDepiction.ts';
import { useDesk, useDeskStore, useSay } from './useDesk.ts';
import { useSize } from './useSize.ts';

const STEPS = 1000; // of the slider

/** The strip of time: run, pause, scrub, skip, slow motion. */
export const TimeStrip = memo(function TimeStrip() {
  const say = useSay();
  const store = useDeskStore();
  const { strip } = useDepiction();
  const running = useDesk((desk) => desk.playhead.running);
  const slow = useDesk((desk) => desk.playhead.slow);
  const nothing = useDesk((desk) => desk.timeline.intervals.length < 2);
  const pace = useRef<HTMLSelectElement>(null);
  useEffect(() => {
    if (pace.current) pace.current.value = String(slow);
  }, [slow]);
  const next = useDesk((desk) => neighbours(desk.timeline, desk.playhead.time_s).next !== undefined);
  return (
    <section className="strip" aria-label={say('strip.heading')}>
      <button
        type="button"
        className="round"
        disabled={nothing}
        aria-label={say(running ? 'strip.pause' : 'strip.play')}
        onClick={() => store.send({ kind: running ? 'pause' : 'run' })}
      >
        <svg viewBox="0 0 24 24" width="20" height="20" aria-hidden="true">
          <path d={running ? 'M6 4h4v16H6zM14 4h4v16h-4z' : 'M7 3.5v17l14-8.5z'} />
        </svg>
      </button>
      <Track strip={strip} />
      <button
        type="button"
        className="round round-small"
        disabled={!next}
        aria-label={say('desk.skip')}
        onClick={() => store.send({ kind: 'skip', to: 'next' })}
      >
        <svg viewBox="0 0 24 24" width="16" height="16" aria-hidden="true">
          <path d="M4 3.5v17l12-8.5zM17 4h4v16h-4z" />
        </svg>
      </button>
      <label className="pace">
        <span>{say('strip.slow')}</span>
        <select
          ref={pace}
          defaultValue={slow}
          onChange={(event) => store.send({ kind: 'pace', slow: Number(event.target.value) })}
        >
          {PACES.map((pace) => (
            <option key={pace} value={pace}>
              {pace === 1 ? say('strip.speed.full') : say('desk.speed', { times: String(pace) })}
            </option>
          ))}
        </select>
      </label>
    </section>
  );
});

const Track = memo(function Track({ strip }: { readonly strip: Strip }) {
  const say = useSay();
  const store = useDeskStore();
  const covered = useDesk((desk) => desk.covered);
  const box = useRef<HTMLDivElement>(null);
  const slider = useRef<HTMLInputElement>(null);
  const moment = useRef<HTMLOutputElement>(null);
  const { width, font } = useSize(box);
  const labels = useMemo(() => placeLabels(strip.marks, width, font), [strip, width, font]);

  useEffect(() => {
    const show = () => {
      const { time_s } = store.get().playhead;
      const input = slider.current;
      if (!input) return;
      input.value = String(Math.round(stripPosition(strip, time_s) * STEPS));
      const worded = time_s < 0 ? say('strip.before') : say('strip.now', { time: quantity(time_s, 's') });
      if (input.getAttribute('aria-valuetext') !== worded) input.setAttribute('aria-valuetext', worded);
      if (moment.current && moment.current.textContent !== worded) moment.current.textContent = worded;
    };
    show();
    return store.follow(show);
  }, [store, strip, say]);

  return (
    <div className="track" ref={box}>
      <ol className="marks" hidden={covered}>
        {labels.map(({ label, kind, position, row, left }) => (
          <li key={`${kind} ${position}`} className={`mark mark-${kind} mark-row-${row}`} style={{ left }}>
            {label}
          </li>
        ))}
      </ol>
      <svg className="segments" width="100%" height="10" aria-hidden="true">
        {covered ? (
          <rect className="segment-normal" width="100%" height="10" rx="5" />
        ) : (
          strip.segments.map(({ from, to, kind }) => (
            <rect key={from} className={`segment-${kind}`} x={percent(from)} width={percent(to - from)} height="10" />
          ))
        )}
        {!covered &&
          strip.marks.map(({ position, kind }) => (
            <rect key={`${kind} ${position}`} className="tick" x={percent(position)} y="0" width="2" height="10" />
          ))}
      </svg>
      <input
        ref={slider}
        type="range"
        min={0}
        max={STEPS}
        step={1}
        defaultValue={0}
        aria-label={say('strip.scrub')}
        onChange={(event) => store.send({ kind: 'seek', time_s: stripTime(strip, Number(event.target.value) / STEPS) })}
      />
      <output ref={moment} className="moment-now" aria-hidden="true" />
    </div>
  );
});

function percent(share: number): string {
  return `${share * 100}%`;
}
