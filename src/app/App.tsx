import { useCallback, useEffect, useMemo, useState } from 'react';
import { prepareWords, say as sayIn } from '../explain/index.ts';
import type { Conditions } from '../installation/index.ts';
import { AboutDialog } from './AboutDialog.tsx';
import { afterFrame } from './afterFrame.ts';
import { BrokenLink } from './BrokenLink.tsx';
import { openDesk, step } from './desk.ts';
import { ErrorBoundary } from './ErrorBoundary.tsx';
import { FileDialog } from './FileDialog.tsx';
import { Header, type Mode } from './Header.tsx';
import { KeysDialog } from './KeysDialog.tsx';
import { LESSON_NAMES } from './lessonNames.ts';
import { readLink, writeLessonLink, YARD_LINK, type Link, type LinkFault } from './link.ts';
import type { Opened } from './openFile.ts';
import { PLACE_NAMES, PLACES, placeOf } from './places.ts';
import { Screen } from './Screen.tsx';
import { keepSettings, readSettings, themeOf, type Settings } from './settings.ts';
import { createStore, type Store } from './store.ts';
import { fragmentOf, useLink } from './useLink.ts';
import { useMedia } from './useMedia.ts';
import { DeskContext, VocabularyContext } from './useDesk.ts';
import type { Deed, Desk } from './desk.ts';

const HOME = 'bakery';

/** What the page opens with. */
interface Opening {
  readonly store: Store<Desk, Deed>;
  readonly mode: Mode;
  readonly lesson: string | null;
  readonly settings: Settings;
  readonly fault: LinkFault | null;
}

/** The whole page. It owns the desk, the settings and what lies over the desk; everything else is given to it. */
export function App() {
  const [opening] = useState(openPage);
  const { store } = opening;
  const [mode, setMode] = useState(opening.mode);
  const [lesson, setLesson] = useState(opening.lesson);
  const [settings, setSettings] = useState(opening.settings);
  const [fault, setFault] = useState(opening.fault);
  const [dialog, setDialog] = useState<'about' | 'keys' | null>(null);
  const [opened, setOpened] = useState<Extract<Opened, { ok: false }> | null>(null);
  const [arrives, setArrives] = useState(false);
  const [copied, setCopied] = useState(false);
  const { vocabulary } = settings;
  const theme = themeOf(settings, useMedia('(prefers-color-scheme: dark)'));

  const change = useCallback((part: Partial<Settings>) => setSettings((before) => ({ ...before, ...part })), []);
  useEffect(() => keepSettings(settings), [settings]);
  useEffect(() => store.send({ kind: 'still', still: settings.still }), [store, settings.still]);
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme;
    document.documentElement.dataset['still'] = String(settings.still);
  }, [theme, settings.still]);
  useEffect(() => {
    const timer = setTimeout(prepareWords, 600);
    return () => clearTimeout(timer);
  }, []);

  const openPlace = useCallback(
    async (file: File) => {
      const { openFile } = await import('./openFile.ts');
      const result = openFile(await file.text(), file.name);
      if (!result.ok) return setOpened(result);
      const { place } = result;
      store.send({ kind: 'open', place });
      change({ vocabulary: place.build.installation.region });
      setMode('explore');
    },
    [store, change],
  );
  useDrop(openPlace);
  const follow = useCallback(
    (link: Link) => {
      setFault(link.kind === 'broken' ? link.fault : null);
      if (link.kind === 'lesson') {
        setMode('learn');
        setLesson(link.lesson);
      }
      if (link.kind === 'yard') setMode('yard');
      if (link.kind !== 'place') return;
      const place = placeOf(link.place);
      store.send({ kind: 'open', place, conditions: link.conditions });
      change({ vocabulary: link.vocabulary ?? place.build.installation.region });
      setMode((before) => (before === 'demonstrate' ? before : 'explore'));
    },
    [store, change],
  );
  const explore = useCallback(
    (place: string, conditions: Conditions) => {
      store.send({ kind: 'open', place: placeOf(place), conditions });
      setMode('explore');
    },
    [store],
  );
  const openFromYard = useCallback(
    (id: string) => {
      if (PLACES[id] === undefined) return;
      const place = placeOf(id);
      store.send({ kind: 'open', place });
      change({ vocabulary: place.build.installation.region });
      setArrives(true);
      setMode('explore');
    },
    [store, change],
  );
  useLink({ store, vocabulary, mode, lesson, on: fault === null, follow });
  const copyLink = useCallback(async () => {
    const fragment =
      mode === 'yard' ? YARD_LINK : mode === 'learn' ? writeLessonLink(lesson) : fragmentOf(store.get(), vocabulary);
    await navigator.clipboard.writeText(new URL(`#${fragment}`, location.href).href);
    setCopied(true);
  }, [store, vocabulary, mode, lesson]);

  const words = useMemo(
    () => ({ title: sayIn('error.title', vocabulary), next: sayIn('error.next', vocabulary) }),
    [vocabulary],
  );
  return (
    <ErrorBoundary {...words}>
      <VocabularyContext value={vocabulary}>
        <DeskContext value={store}>
          {fault ? (
            <BrokenLink
              fault={fault}
              onHome={() => {
                store.send({ kind: 'open', place: placeOf(HOME) });
                setFault(null);
              }}
            />
          ) : (
            <div className={`page page-${mode} ${arrives ? 'page-arrives' : ''}`}>
              <Header
                mode={mode}
                settings={settings}
                copied={copied}
                onMode={setMode}
                onSettings={change}
                onFile={openPlace}
                onLink={copyLink}
                onDialog={setDialog}
              />
              <Screen
                mode={mode}
                theme={theme}
                sound={settings.sound}
                still={settings.still}
                keys={settings.keys}
                lesson={lesson}
                onMode={setMode}
                onLesson={setLesson}
                onExplore={explore}
                onPlace={openFromYard}
                onHelp={() => setDialog('keys')}
              />
            </div>
          )}
          {dialog === 'about' && <AboutDialog onClose={() => setDialog(null)} />}
          {dialog === 'keys' && (
            <KeysDialog on={settings.keys} onTurn={(keys) => change({ keys })} onClose={() => setDialog(null)} />
          )}
          {opened && <FileDialog opened={opened} onClose={() => setOpened(null)} />}
        </DeskContext>
      </VocabularyContext>
    </ErrorBoundary>
  );
}

function openPage(): Opening {
  const link = readLink(location.hash, PLACES, LESSON_NAMES, PLACE_NAMES);
  const kept = readSettings();
  const place = placeOf(link.kind === 'place' ? link.place : HOME);
  const conditions = link.kind === 'place' ? link.conditions : undefined;
  const vocabulary = (link.kind === 'place' ? link.vocabulary : null) ?? place.build.installation.region;
  const desk = openDesk(place, conditions, { still: kept.still });
  return {
    store: createStore(desk, step, afterFrame),
    mode: link.kind === 'lesson' ? 'learn' : link.kind === 'yard' ? 'yard' : 'explore',
    lesson: link.kind === 'lesson' ? link.lesson : null,
    settings: { ...kept, vocabulary },
    fault: link.kind === 'broken' ? link.fault : null,
  };
}

function useDrop(onFile: (file: File) => void): void {
  useEffect(() => {
    const over = (event: DragEvent) => event.preventDefault();
    const drop = (event: DragEvent) => {
      event.preventDefault();
      const file = event.dataTransfer?.files[0];
      if (file) onFile(file);
    };
    addEventListener('dragover', over);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragover', over);
      removeEventListener('drop', drop);
    };
  }, [onFile]);
}
