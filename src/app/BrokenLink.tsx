import { list } from '../explain/index.ts';
import type { LinkFault } from './link.ts';
import { useSay } from './useDesk.ts';

/** Says what is wrong with a link and offers a place to go on from. */
export function BrokenLink({ fault, onHome }: { readonly fault: LinkFault; readonly onHome: () => void }) {
  const say = useSay();
  const condition = fault.kind === 'option' ? fault.condition : '';
  return (
    <main className="sheet failure" role="alert">
      <h1>{say('link.broken')}</h1>
      <p>{say('link.broken.reason', { reason: say(`link.fault.${fault.kind}`, { said: fault.said, condition }) })}</p>
      {fault.known.length > 0 && <p>{say('link.known', { known: list(fault.known) })}</p>}
      <button type="button" className="go" onClick={onHome}>
        {say('link.offer')}
      </button>
    </main>
  );
}
