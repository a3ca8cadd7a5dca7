import { useEffect, useRef } from 'react';
import type { Vocabulary } from '../explain/index.ts';
import type { Deed, Desk } from './desk.ts';
import type { Mode } from './Header.tsx';
import { LESSON_NAMES } from './lessonNames.ts';
import { readLink, writeLessonLink, writeLink, YARD_LINK, type Link } from './link.ts';
import { fetchPlace, PLACE_NAMES, PLACES } from './places.ts';
import type { Store } from './store.ts';

const SETTLED_ms = 250; // browsers count how often an address is changed

/** Keeps the address at what is set, and follows one that somebody puts in. */
export function useLink({
  store,
  vocabulary,
  mode,
  lesson,
  on,
  follow,
}: {
  readonly store: Store<Desk, Deed>;
  readonly vocabulary: Vocabulary;
  readonly mode: Mode;
  readonly lesson: string | null;
  /** False while the address itself is what is shown. */
  readonly on: boolean;
  readonly follow: (link: Link) => void;
}): void {
  const fetching = useRef(false); // the address is ahead of the desk and may not be written back
  useEffect(() => {
    if (!on) return;
    if (mode === 'yard') return show(YARD_LINK);
    if (mode === 'learn') return show(writeLessonLink(lesson));
    let shown: unknown;
    let timer = 0;
    const write = () => {
      if (!fetching.current) show(fragmentOf(store.get(), vocabulary));
    };
    const writeSoon = () => {
      const { conditions } = store.get();
      if (shown === conditions) return;
      shown = conditions;
      clearTimeout(timer);
      timer = window.setTimeout(write, SETTLED_ms);
    };
    writeSoon();
    const stop = store.follow(writeSoon);
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [store, vocabulary, mode, lesson, on]);
  useEffect(() => {
    const read = async () => {
      fetching.current = true;
      await fetchPlace(location.hash);
      const link = readLink(location.hash, PLACES, LESSON_NAMES, PLACE_NAMES);
      if (link.kind === 'place') {
        const { fetchDrawing } = await import('./drawings.ts');
        await fetchDrawing(PLACES[link.place]?.drawing);
      }
      fetching.current = false;
      follow(link);
    };
    addEventListener('hashchange', read);
    return () => removeEventListener('hashchange', read);
  }, [follow]);
}

/** What of a desk stands in a link; nothing for a file that somebody opened. */
export function fragmentOf({ place, conditions }: Desk, vocabulary: Vocabulary): string {
  return place.id === null ? '' : writeLink(place.id, place.build.installation, conditions, vocabulary);
}

function show(fragment: string): void {
  history.replaceState(null, '', fragment === '' ? location.pathname : `#${fragment}`);
}
