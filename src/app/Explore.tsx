import type { Theme } from '../scene/index.ts';
import { Account, Outcome, Ways } from './Account.tsx';
import { Conditions } from './Conditions.tsx';
import { ProfilePanel } from './ProfilePanel.tsx';
import { Stage } from './Stage.tsx';
import { TimeStrip } from './TimeStrip.tsx';
import { useSay } from './useDesk.ts';
import { useNarrow } from './useNarrow.ts';

/** The desk: stage, profile and strip on the left, what is the matter and what happens on the right; on a phone all in
 *  one column. */
export function Explore({ theme }: { readonly theme: Theme }) {
  const say = useSay();
  if (useNarrow())
    return (
      <main className="desk desk-narrow">
        <Stage theme={theme} />
        <TimeStrip />
        <section className="sheet account" aria-label={say('account.heading')} id="account">
          <Outcome />
        </section>
        <Conditions />
        <section className="sheet account" aria-label={say('ledger.way')}>
          <Ways />
        </section>
        <ProfilePanel view={null} />
      </main>
    );
  return (
    <main className="desk">
      <div className="desk-left">
        <Stage theme={theme} below={(view) => <ProfilePanel view={view} />} />
        <TimeStrip />
      </div>
      <div className="desk-right">
        <Conditions />
        <Account />
      </div>
    </main>
  );
}
