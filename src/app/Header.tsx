import { memo, useEffect, useRef, type ChangeEvent, type RefObject } from 'react';
import type { Vocabulary } from '../explain/index.ts';
import { PLACE_TITLES } from './places.ts';
import type { Settings } from './settings.ts';
import { useDesk, useDeskStore, useSay } from './useDesk.ts';
import { useMedia } from './useMedia.ts';

/** The three ways of working, and the lane from which a place is chosen. */
export type Mode = 'explore' | 'learn' | 'demonstrate' | 'yard';

const MODES: readonly Mode[] = ['explore', 'learn', 'demonstrate', 'yard'];
const VOCABULARIES: readonly Vocabulary[] = ['north-america', 'iec'];

/** The head of the page: where we are, the modes, the words of the trade, and what the page as a whole can do. */
export const Header = memo(function Header({
  mode,
  settings,
  copied,
  onMode,
  onSettings,
  onFile,
  onLink,
  onDialog,
}: {
  readonly mode: Mode;
  readonly settings: Settings;
  readonly copied: boolean;
  readonly onMode: (mode: Mode) => void;
  readonly onSettings: (change: Partial<Settings>) => void;
  readonly onFile: (file: File) => void;
  readonly onLink: () => void;
  readonly onDialog: (dialog: 'about' | 'keys') => void;
}) {
  const say = useSay();
  const store = useDeskStore();
  const covered = useDesk((desk) => desk.covered);
  const title = useDesk((desk) => desk.place.title);
  const place = useDesk((desk) => desk.place.id);
  const narrow = useMedia('(width < 1140px)');
  const menu = useRef<HTMLDetailsElement>(null);
  useCloseOutside(menu);
  const picker = useRef<HTMLInputElement>(null);
  function pick(event: ChangeEvent<HTMLInputElement>) {
    const file = event.target.files?.[0];
    if (file) onFile(file);
    event.target.value = '';
  }
  const tools = (
    <>
      <div className="segmented" role="group" aria-label={say('vocabulary.label')}>
        {VOCABULARIES.map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={settings.vocabulary === one}
            onClick={() => onSettings({ vocabulary: one })}
          >
            {say(`vocabulary.${one}`)}
          </button>
        ))}
      </div>
      {mode !== 'learn' && mode !== 'yard' && (
        <button
          type="button"
          className="pill"
          aria-pressed={covered}
          onClick={() => store.send({ kind: 'cover', covered: !covered })}
        >
          {say(covered ? 'uncover.numbers' : 'cover.numbers')}
        </button>
      )}
      <button
        type="button"
        className="pill"
        aria-pressed={settings.sound}
        onClick={() => onSettings({ sound: !settings.sound })}
      >
        {say(settings.sound ? 'sound.on' : 'sound.off')}
      </button>
    </>
  );
  return (
    <header className="head">
      <a className="skip" href="#account" onClick={skip}>
        {say('app.skip')}
      </a>
      <h1>{say('app.name')}</h1>
      <p className="where">{say('app.place', { place: title })}</p>
      <nav className="segmented" aria-label={say('desk.modes')}>
        {MODES.map((one) => (
          <button key={one} type="button" aria-pressed={mode === one} onClick={() => onMode(one)}>
            {say(`mode.${one}`)}
          </button>
        ))}
      </nav>
      {!narrow && tools}
      <details className="menu" ref={menu} onBlur={closeOutside}>
        <summary className="pill">{say('desk.menu')}</summary>
        <div className="menu-sheet">
          {narrow && tools}
          <Choice
            legend={say('theme.label')}
            options={[
              ['system', say('theme.system')],
              ['day', say('theme.day')],
              ['dark', say('theme.dark')],
            ]}
            chosen={settings.theme}
            choose={(theme) => onSettings({ theme })}
          />
          <Choice
            legend={say('motion.label')}
            options={[
              ['full', say('motion.full')],
              ['still', say('motion.still')],
            ]}
            chosen={settings.still ? 'still' : 'full'}
            choose={(motion) => onSettings({ still: motion === 'still' })}
          />
          <label className="menu-item menu-place">
            {say('place.label')}
            <select value={place ?? ''} onChange={({ target }) => (location.hash = target.value)}>
              {place === null && <option value="">{title}</option>}
              {[...PLACE_TITLES].map(([id, name]) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          <button type="button" className="menu-item" onClick={() => picker.current?.click()}>
            {say('file.open')}
          </button>
          <button type="button" className="menu-item" onClick={onLink}>
            {say(copied ? 'link.copied' : 'link.copy')}
          </button>
          <button type="button" className="menu-item" onClick={() => onDialog('keys')}>
            {say('keys.heading')}
          </button>
          <button type="button" className="menu-item" onClick={() => onDialog('about')}>
            {say('about.heading')}
          </button>
        </div>
      </details>
      <input ref={picker} type="file" accept=".yaml,.yml" hidden onChange={pick} aria-label={say('file.open')} />
    </header>
  );
});

function Choice<Option extends string>({
  legend,
  options,
  chosen,
  choose,
}: {
  readonly legend: string;
  readonly options: readonly (readonly [Option, string])[];
  readonly chosen: Option;
  readonly choose: (option: Option) => void;
}) {
  return (
    <fieldset className="radios">
      <legend>{legend}</legend>
      {options.map(([option, text]) => (
        <label key={option}>
          <input type="radio" name={legend} checked={chosen === option} onChange={() => choose(option)} />
          <span>{text}</span>
        </label>
      ))}
    </fieldset>
  );
}

/** The fragment of the address belongs to the link of what is set, so the skip link moves the focus by itself. */
function skip(event: { preventDefault: () => void }) {
  event.preventDefault();
  const account = document.getElementById('account');
  account?.setAttribute('tabindex', '-1');
  account?.focus();
}

function closeOutside({ currentTarget, relatedTarget }: React.FocusEvent<HTMLDetailsElement>) {
  if (relatedTarget && !currentTarget.contains(relatedTarget)) currentTarget.open = false;
}

/** Closes an open menu when something else is pressed, and on Escape. */
function useCloseOutside(menu: RefObject<HTMLDetailsElement | null>): void {
  useEffect(() => {
    const close = (event: Event) => {
      const node = menu.current;
      if (!node?.open) return;
      if (
        event instanceof KeyboardEvent
          ? event.key !== 'Escape'
          : event.target instanceof Node && node.contains(event.target)
      )
        return;
      node.open = false;
    };
    addEventListener('pointerdown', close);
    addEventListener('keydown', close);
    return () => {
      removeEventListener('pointerdown', close);
      removeEventListener('keydown', close);
    };
  }, [menu]);
}
