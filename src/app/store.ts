/** Holds one state and hands it to whoever listens; the state changes only by `step`. */
export interface Store<State, Deed> {
  get(): State;
  send(deed: Deed): void;
  /** @returns what stops the listening */
  subscribe(listener: () => void): () => void;
}

/** A store that owns its state. `step` is pure: the same state and deed give the same next state; the same object means
 *  that nothing has changed and nobody is told. */
export function createStore<State, Deed>(
  initial: State,
  step: (state: State, deed: Deed) => State,
): Store<State, Deed> {
  const listeners = new Set<() => void>();
  let state = initial;
  return {
    get: () => state,
    send(deed) {
      const next = step(state, deed);
      if (next === state) return;
      state = next;
      listeners.forEach((listener) => listener());
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
