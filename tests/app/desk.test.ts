import { describe, expect, test } from 'vitest';
import { changed, openDesk, step, type Deed, type Desk } from '../../src/app/desk.ts';
import { intervalAt, runEnd_s } from '../../src/app/playhead.ts';
import { initialConditions } from '../../src/installation/index.ts';
import { bakery } from './place.ts';

const FAULT: Deed = { kind: 'choose', condition: 'line touches the case', option: 'solid' };
const after = (deeds: readonly Deed[], desk: Desk = openDesk(bakery)) => deeds.reduce(step, desk);

describe('a desk', () => {
  test('opens at rest with everything as the file says', () => {
    const desk = openDesk(bakery);
    expect(desk.conditions).toEqual(initialConditions(bakery.build.installation));
    expect(desk.timeline.intervals).toHaveLength(1);
    expect(desk.playhead.running).toBe(false);
    expect(changed(bakery, desk.conditions)).toEqual([]);
  });

  test('computes the run anew for a change and shows it from the moment the fault strikes', () => {
    const desk = after([FAULT]);
    expect(desk.timeline.intervals.some(({ because }) => because.kind === 'device-operated')).toBe(true);
    expect(desk.playhead).toMatchObject({ time_s: 0, running: true });
    expect(changed(bakery, desk.conditions)).toEqual([{ condition: 'line touches the case', option: 'solid' }]);
  });

  test('waits at ordinary work while the outcome is covered', () => {
    const desk = after([{ kind: 'cover', covered: true }, FAULT]);
    expect(desk.playhead.running).toBe(false);
    expect(desk.playhead.time_s).toBeLessThan(0);
    expect(step(desk, { kind: 'run' }).playhead.running).toBe(true);
  });

  test('moves nothing by itself where motion is not wanted', () => {
    const desk = after([FAULT], openDesk(bakery, undefined, { still: true }));
    expect(desk.playhead).toMatchObject({ time_s: 0, running: false });
  });

  test('undoes change by change, and a reset can be undone too', () => {
    const changes: readonly Deed[] = [
      FAULT,
      { kind: 'choose', condition: 'lamps on', option: 'no' },
      { kind: 'reset' },
    ];
    const desk = after(changes);
    expect(changed(bakery, desk.conditions)).toEqual([]);
    const back = step(desk, { kind: 'undo' });
    expect(changed(bakery, back.conditions)).toHaveLength(2);
    const start = after([{ kind: 'undo' }, { kind: 'undo' }], back);
    expect(start.conditions).toEqual(openDesk(bakery).conditions);
    expect(step(start, { kind: 'undo' })).toBe(start);
  });

  test('passes through a run in slow motion and stops when the story is over', () => {
    let desk = after([FAULT, { kind: 'pace', slow: 100 }]);
    const seen = new Set<number>();
    for (let frame = 0; frame < 1000 && desk.playhead.running; frame++) {
      seen.add(intervalAt(desk.timeline, desk.playhead.time_s));
      desk = step(desk, { kind: 'pass', wall_s: 1 / 60 });
    }
    expect(desk.playhead.running).toBe(false);
    expect(desk.playhead.time_s).toBeCloseTo(runEnd_s(desk.timeline, 100), 12);
    expect([...seen]).toEqual([1, 2]); // the fault, then what is open
  });

  test('keeps the slow motion that somebody chose, and otherwise finds one in which the first event comes soon', () => {
    const found = after([FAULT]);
    const first_s = found.timeline.intervals.find(({ start_s }) => start_s > 0)?.start_s ?? NaN;
    expect(first_s * found.playhead.slow).toBeGreaterThan(1);
    expect(first_s * found.playhead.slow).toBeLessThanOrEqual(6);
    expect(after([{ kind: 'pace', slow: 3 }, FAULT]).playhead.slow).toBe(3);
  });

  test('skips from event to event and no further', () => {
    const desk = after([FAULT, { kind: 'skip', to: 'next' }]);
    expect(intervalAt(desk.timeline, desk.playhead.time_s)).toBe(2);
    expect(step(desk, { kind: 'skip', to: 'next' })).toBe(desk);
    expect(step(desk, { kind: 'skip', to: 'previous' }).playhead.time_s).toBe(0);
  });
});
