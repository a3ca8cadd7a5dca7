import { Dialog } from './Dialog.tsx';
import { useSay } from './useDesk.ts';

const LIMITS = ['about.1', 'about.2', 'about.3', 'about.4', 'about.5'] as const;
const CAUTIONS = ['caution.model', 'caution.measure', 'caution.codes', 'caution.shock'] as const;
const SOURCES = [
  'about.source.body',
  'about.source.devices',
  'about.source.conductors',
  'about.source.earth',
  'about.source.transformer',
] as const;

/** What the model can and cannot do, cautions, sources. */
export function AboutDialog({ onClose }: { readonly onClose: () => void }) {
  const say = useSay();
  return (
    <Dialog heading={say('about.heading')} onClose={onClose} wide>
      {LIMITS.map((key) => (
        <p key={key}>{say(key)}</p>
      ))}
      <h3>{say('cautions.heading')}</h3>
      <ul>
        {CAUTIONS.map((key) => (
          <li key={key}>{say(key)}</li>
        ))}
      </ul>
      <h3>{say('about.sources')}</h3>
      <ul>
        {SOURCES.map((key) => (
          <li key={key}>{say(key)}</li>
        ))}
      </ul>
    </Dialog>
  );
}
