import { useState } from 'react';
import { useSay } from './useDesk.ts';

const ANSWERS = ['demo.answer.once', 'demo.answer.later', 'demo.answer.nothing'] as const;

/** Hands that go up in the room, counted by pressing. */
export function Tally() {
  const say = useSay();
  const [hands, setHands] = useState<readonly number[]>(() => ANSWERS.map(() => 0));
  const all = hands.reduce((sum, count) => sum + count, 0);
  const change = (index: number, by: number) =>
    setHands((before) => before.map((count, one) => (one === index ? Math.max(0, count + by) : count)));
  return (
    <section className="tally" aria-label={say('stage.hands', { hands: all })}>
      {ANSWERS.map((key, index) => {
        const answer = say(key);
        const count = hands[index] ?? 0;
        return (
          <div key={key} className="tally-row">
            <button
              type="button"
              className="tally-answer"
              aria-label={say('stage.tally.add', { answer })}
              onClick={() => change(index, 1)}
            >
              <span className="tally-bar" style={{ width: `${all > 0 ? (100 * count) / all : 0}%` }} />
              <b>{answer}</b>
              <strong>{count}</strong>
            </button>
            <button
              type="button"
              className="tally-less"
              aria-label={say('stage.tally.less', { answer })}
              disabled={count === 0}
              onClick={() => change(index, -1)}
            >
              −
            </button>
          </div>
        );
      })}
    </section>
  );
}
