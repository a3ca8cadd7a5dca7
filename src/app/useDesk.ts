import { createContext, useCallback, useContext, useSyncExternalStore } from 'react';
import { say, type Vocabulary, type WordKey, type WordValues } from '../explain/index.ts';
import type { Deed, Desk } from './desk.ts';
import type { Store } from './store.ts';

/** The desk that the components below belong to. */
export const DeskContext = createContext<Store<Desk, Deed> | null>(null);

/** The words of the trade in use. */
export const VocabularyContext = createContext<Vocabulary>('north-america');

/** The store of the desk around this component. @throws Error outside of a desk */
export function useDeskStore(): Store<Desk, Deed> {
  const store = useContext(DeskContext);
  if (!store) throw new Error('useDeskStore: there is no desk around this component');
  return store;
}

/** A part of the desk's state; the component is drawn again when this part is another one, a frame after the picture. */
export function useDesk<Part>(select: (desk: Desk) => Part): Part {
  const store = useDeskStore();
  return useSyncExternalStore(store.follow, () => select(store.get()));
}

/** Speaks in the vocabulary in use. */
export function useSay(): (key: WordKey, values?: WordValues) => string {
  const vocabulary = useContext(VocabularyContext);
  return useCallback((key, values) => say(key, vocabulary, values), [vocabulary]);
}

/** The vocabulary in use. */
export function useVocabulary(): Vocabulary {
  return useContext(VocabularyContext);
}
