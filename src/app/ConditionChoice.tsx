import { memo, useEffect, useId, useRef } from 'react';
import { conditionLabel, conditionSentence, optionLabel, type Vocabulary } from '../explain/index.ts';
import type { Condition } from '../installation/index.ts';
import { useDesk, useDeskStore, useVocabulary } from './useDesk.ts';

/** One condition: a switch is one sentence to press, a fault adds its degrees, a choice is a small set of radio buttons. */
export const ConditionChoice = memo(function ConditionChoice({
  name,
  condition,
  digit,
}: {
  readonly name: string;
  readonly condition: Condition;
  /** The number key that presses it, shown on it. */
  readonly digit?: string | undefined;
}) {
  const vocabulary = useVocabulary();
  const store = useDeskStore();
  const { options } = condition;
  const [off = '', on = ''] = options;
  const chosen = useDesk((desk) => desk.conditions[name] ?? off);
  const choose = (option: string) => store.send({ kind: 'choose', condition: name, option });
  if (!isSwitch(condition))
    return <Radios name={name} condition={condition} options={options} chosen={chosen} choose={choose} />;
  const set = chosen !== off;
  return (
    <>
      <button type="button" className="chip" aria-pressed={set} onClick={() => choose(set ? off : on)}>
        {digit !== undefined && <kbd>{digit}</kbd>}
        {chipText(name, set ? chosen : on, condition, vocabulary)}
      </button>
      {set && options.length > 2 && (
        <Radios name={name} condition={condition} options={options.slice(1)} chosen={chosen} choose={choose} bare />
      )}
    </>
  );
});

function Radios({
  name,
  condition,
  options,
  chosen,
  choose,
  bare = false,
}: {
  readonly name: string;
  readonly condition: Condition;
  readonly options: readonly string[];
  readonly chosen: string;
  readonly choose: (option: string) => void;
  /** The sentence stands beside it already. */
  readonly bare?: boolean;
}) {
  const vocabulary = useVocabulary();
  const group = useId();
  return (
    <fieldset className={bare ? 'radios degrees' : 'radios'}>
      <legend className={bare ? 'visually-hidden' : ''}>{conditionLabel(name, vocabulary, condition)}</legend>
      {options.map((option) => (
        <label key={option}>
          <Radio
            group={group}
            checked={chosen === option}
            choose={() => choose(option)}
            label={conditionSentence(name, option, vocabulary, condition)}
          />
          <span>{optionLabel(option, vocabulary, condition)}</span>
        </label>
      ))}
    </fieldset>
  );
}

/** Keeps what was pressed until the desk has followed: one that React holds would jump back for that long. */
function Radio({
  group,
  checked,
  choose,
  label,
}: {
  readonly group: string;
  readonly checked: boolean;
  readonly choose: () => void;
  readonly label: string;
}) {
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (input.current) input.current.checked = checked;
  });
  return (
    <input
      ref={input}
      type="radio"
      name={group}
      defaultChecked={checked}
      onChange={(event) => event.target.checked && choose()}
      aria-label={label}
    />
  );
}

/** True for a condition that is one sentence to press, with or without degrees. */
export function isSwitch({ group, options }: Condition): boolean {
  return group !== 'person' || (options.length === 2 && options[0] === 'no');
}

function chipText(name: string, option: string, condition: Condition, vocabulary: Vocabulary): string {
  return condition.options.length > 2
    ? conditionLabel(name, vocabulary, condition)
    : conditionSentence(name, option, vocabulary, condition);
}
