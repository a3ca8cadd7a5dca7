import { lazy, memo, Suspense, useEffect, useRef, useState, type ReactNode } from 'react';
import { quantity, type StoryLine, type WordKey } from '../explain/index.ts';
import { Covered } from './Covered.tsx';
import { useAccount, useAdvice } from './useAccount.ts';
import { Ledger } from './Ledger.tsx';
import { useDesk, useDeskStore, useSay } from './useDesk.ts';

/** What happens, in words: the outcome, why, the ways home, the story, what would have made it safe, cautions. */
export function Account() {
  const say = useSay();
  const { headline } = useAccount();
  const sheet = useRef<HTMLElement>(null);
  // Another outcome is read from its first sentence, wherever the last one was left.
  useEffect(() => {
    if (sheet.current) sheet.current.scrollTop = 0;
  }, [headline]);
  return (
    <section className="sheet account" aria-labelledby="account-heading" id="account" ref={sheet}>
      <h2 id="account-heading">{say('account.heading')}</h2>
      <Outcome />
      <Ways />
    </section>
  );
}

/** The big sentence, and two or three of why. */
export const Outcome = memo(function Outcome({ brief = false }: { readonly brief?: boolean }) {
  const say = useSay();
  const { headline, why } = useAccount();
  const covered = useDesk((desk) => desk.covered);
  if (covered) return <Covered>{say('covered.outcome')}</Covered>;
  return (
    <>
      <p className="headline">{headline}</p>
      {!brief && <p className="why">{why.join(' ')}</p>}
    </>
  );
});

/** The ledger of ways home and all that is told after it. */
export const Ways = memo(function Ways({ brief = false }: { readonly brief?: boolean }) {
  const say = useSay();
  const { ledger, story, cautions } = useAccount();
  const covered = useDesk((desk) => desk.covered);
  return (
    <>
      {covered ? <Covered>{say('covered.ledger')}</Covered> : <Ledger ledger={ledger} />}
      {!covered && !brief && (
        <>
          <Repairs />
          <Story story={story} />
          <Below heading="chart.heading">
            <Charts />
          </Below>
          <Below heading="below.repairs">
            <SmallestRepair />
          </Below>
          <Below heading="below.verdicts">
            <Verdicts />
          </Below>
          <Below heading="below.sweep">
            <Sweep />
          </Below>
          <Below heading="stage.table">
            <ValueTable />
          </Below>
        </>
      )}
      <Cautions cautions={cautions} />
    </>
  );
});

/** The whole run in sentences, each with its moment. */
const Story = memo(function Story({ story }: { readonly story: readonly StoryLine[] }) {
  const say = useSay();
  const store = useDeskStore();
  if (story.length === 0) return null;
  return (
    <details className="story">
      <summary>{say('account.story')}</summary>
      <ol>
        {story.map(({ at_s, text }, index) => (
          <li key={index}>
            <button type="button" className="moment" onClick={() => store.send({ kind: 'seek', time_s: at_s })}>
              {at_s < 0 ? say('account.before') : quantity(at_s, 's')}
            </button>
            <span>{text}</span>
          </li>
        ))}
      </ol>
    </details>
  );
});

/** What would have made it safe; the change itself can be tried at once. */
const Repairs = memo(function Repairs() {
  const say = useSay();
  const store = useDeskStore();
  const repairs = useAdvice();
  if (!repairs || repairs.length === 0) return null;
  return (
    <section className="repairs">
      <h3>{say('account.repairs')}</h3>
      {repairs.map(({ text, finding }, index) => (
        <p key={index} className="repair">
          <span>{text}</span>
          {finding.kind === 'made-safe-by' && (
            <button
              type="button"
              className="plain"
              onClick={() => store.send({ kind: 'choose', condition: finding.condition, option: finding.option })}
            >
              {say('desk.try')}
            </button>
          )}
        </p>
      ))}
    </section>
  );
});

/** Something more, fetched when it is asked for. */
function Below({ heading, children }: { readonly heading: WordKey; readonly children: ReactNode }) {
  const say = useSay();
  const [open, setOpen] = useState(false);
  return (
    <details className="story" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{say(heading)}</summary>
      {open && <Suspense fallback={<p className="quiet">{say('app.loading')}</p>}>{children}</Suspense>}
    </details>
  );
}

const Charts = lazy(async () => ({ default: (await import('./Charts.tsx')).Charts }));
const SmallestRepair = lazy(async () => ({ default: (await import('./SmallestRepair.tsx')).SmallestRepair }));
const Verdicts = lazy(async () => ({ default: (await import('./Verdicts.tsx')).Verdicts }));
const Sweep = lazy(async () => ({ default: (await import('./Sweep.tsx')).Sweep }));
const ValueTable = lazy(async () => ({ default: (await import('./ValueTable.tsx')).ValueTable }));

function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  const say = useSay();
  const [first, ...more] = cautions;
  if (first === undefined) return null;
  return (
    <details className="cautions">
      <summary>{first}</summary>
      <ul aria-label={say('cautions.heading')}>
        {more.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </details>
  );
}
