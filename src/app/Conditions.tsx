import { memo, useId, useMemo, useState } from 'react';
import type { Condition } from '../installation/index.ts';
import { ConditionChoice } from './ConditionChoice.tsx';
import { changed } from './desk.ts';
import { useDesk, useDeskStore, useSay } from './useDesk.ts';

/** The groups in the order in which they are read: what fails, the way home, what should open, what runs, the person. */
const GROUPS = ['fault', 'path', 'device', 'load', 'person'] as const;
const FEW = 4; // shown before "more"

/** What is the matter: every condition as a sentence that can be pressed. Folded it shows those that are set and the first
 *  of the others, unfolded all of them by group. */
export const Conditions = memo(function Conditions() {
  const say = useSay();
  const place = useDesk((desk) => desk.place);
  const conditions = useDesk((desk) => desk.conditions);
  const undoable = useDesk((desk) => desk.past.length > 0);
  const store = useDeskStore();
  const [open, setOpen] = useState(false);
  const list = useId();
  const all = useMemo(() => Object.entries(place.build.installation.conditions), [place]);
  const set = useMemo(() => changed(place, conditions).map(({ condition }) => condition), [place, conditions]);
  const few = useMemo(() => firstFew(all, set), [all, set]);
  return (
    <section className="sheet conditions" aria-labelledby="conditions-heading">
      <div className="sheet-head">
        <h2 id="conditions-heading">{say('conditions.heading')}</h2>
        <button type="button" className="plain" disabled={!undoable} onClick={() => store.send({ kind: 'undo' })}>
          {say('conditions.undo')}
        </button>
        <button
          type="button"
          className="plain"
          disabled={set.length === 0}
          onClick={() => store.send({ kind: 'reset' })}
        >
          {say('desk.reset')}
        </button>
      </div>
      <div id={list} className={open ? 'groups' : 'chips'}>
        {open
          ? GROUPS.map((group) => <Group key={group} group={group} all={all} />)
          : few.map(([name, condition]) => <ConditionChoice key={name} name={name} condition={condition} />)}
        {all.length > few.length && (
          <button
            type="button"
            className="chip chip-more"
            aria-expanded={open}
            aria-controls={list}
            onClick={() => setOpen(!open)}
          >
            {open ? say('app.less') : say('app.more', { count: all.length - few.length })}
          </button>
        )}
      </div>
    </section>
  );
});

const Group = memo(function Group({
  group,
  all,
}: {
  readonly group: (typeof GROUPS)[number];
  readonly all: readonly (readonly [string, Condition])[];
}) {
  const say = useSay();
  const members = all.filter(([, condition]) => condition.group === group);
  if (members.length === 0) return null;
  return (
    <fieldset>
      <legend>{say(`group.${group}`)}</legend>
      <div className="chips">
        {members.map(([name, condition]) => (
          <ConditionChoice key={name} name={name} condition={condition} />
        ))}
      </div>
    </fieldset>
  );
});

/** Those that are set, then the first of the others, in the order of the file. */
function firstFew(
  all: readonly (readonly [string, Condition])[],
  set: readonly string[],
): readonly (readonly [string, Condition])[] {
  const others = all.filter(([name, { group }]) => !set.includes(name) && (group === 'fault' || group === 'path'));
  const shown = new Set([...set, ...others.slice(0, Math.max(0, FEW - set.length)).map(([name]) => name)]);
  return all.filter(([name]) => shown.has(name));
}
