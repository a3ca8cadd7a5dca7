import { Suspense, useState } from 'react';
import { whatIsTheMatter } from '../explain/index.ts';
import type { Theme } from '../scene/index.ts';
import { Outcome, Ways } from './Account.tsx';
import { ConditionChoice, isSwitch } from './ConditionChoice.tsx';
import { HopRail } from './HopRail.tsx';
import { Picture, PictureToCome } from './lazyPicture.tsx';
import { Tally } from './Tally.tsx';
import { useDesk, useDeskStore, useSay, useVocabulary } from './useDesk.ts';
import { useKeys } from './useKeys.ts';

const DIGITS = '1234567890';

/** The full-window stage with type for the back row: the question, hands, the outcome and the ledger under covers. */
export function Demonstrate({
  theme,
  sound,
  keys,
  onLeave,
}: {
  readonly theme: Theme;
  readonly sound: boolean;
  readonly keys: boolean;
  readonly onLeave: () => void;
}) {
  const say = useSay();
  const vocabulary = useVocabulary();
  const store = useDeskStore();
  const installation = useDesk((desk) => desk.place.build.installation);
  const conditions = useDesk((desk) => desk.conditions);
  const covered = useDesk((desk) => desk.covered);
  const [listed, setListed] = useState(false);
  const matter = whatIsTheMatter(installation, conditions, vocabulary);
  const all = Object.entries(installation.conditions);
  const switches = all.filter(([, condition]) => isSwitch(condition)).slice(0, DIGITS.length);

  const digits = Object.fromEntries(
    switches.map(([condition, { options }], index) => [
      DIGITS.charAt(index),
      () => {
        const [off = '', on = ''] = options;
        const now = store.get().conditions[condition] ?? off;
        store.send({ kind: 'choose', condition, option: now === off ? on : off });
      },
    ]),
  );
  useKeys(
    { ...digits, c: () => setListed(!listed), f: wholeScreen, escape: () => (listed ? setListed(false) : onLeave()) },
    keys,
  );

  return (
    <main className="demo">
      <div className="demo-left">
        <Suspense fallback={<PictureToCome />}>
          <Picture theme={theme} sound={sound} profile={false} bold />
        </Suspense>
        <section className="sheet demo-rail">
          <HopRail keys={keys} />
        </section>
      </div>
      <div className="demo-right" id="account">
        <div className="demo-turn">
          <button type="button" className="pill" aria-pressed={listed} onClick={() => setListed(!listed)}>
            {say(listed ? 'demo.question' : 'demo.conditions')}
          </button>
          <button type="button" className="pill" onClick={() => store.send({ kind: 'cover', covered: !covered })}>
            {say(covered ? 'demo.uncover' : 'demo.cover')}
          </button>
          <button type="button" className="pill" onClick={onLeave}>
            {say('demo.leave')}
          </button>
        </div>
        {listed ? (
          <section className="demo-list" aria-label={say('conditions.heading')}>
            {all.map(([name, condition]) => {
              const index = switches.findIndex(([one]) => one === name);
              return (
                <ConditionChoice
                  key={name}
                  name={name}
                  condition={condition}
                  digit={index < 0 ? undefined : DIGITS.charAt(index)}
                />
              );
            })}
          </section>
        ) : (
          <>
            {(covered || matter.length > 0) && (
              <h2 className={covered ? 'demo-question' : 'demo-question asked'}>
                {matter.length > 0
                  ? `${matter.map((sentence) => `${sentence}.`).join(' ')} ${say('demo.opens')}`
                  : say('demo.ask.first')}
              </h2>
            )}
            {covered && matter.length > 0 && <Tally key={matter.join()} />}
            <Outcome brief />
            <Ways brief />
          </>
        )}
        <p className="demo-keys">{say('stage.keys')}</p>
      </div>
    </main>
  );
}

/** The browser may refuse, then the window stays as it is. */
function wholeScreen(): void {
  const change = document.fullscreenElement ? document.exitFullscreen() : document.documentElement.requestFullscreen();
  change.catch(() => {});
}
