/** Holds one state and hands it to whoever listens; the state changes only by `step`. */
export interface Store<State, Deed> {
  get(): State;
  send(deed: Deed): void;
  /** Listens to every change as it comes. @returns what stops the listening */
  subscribe(listener: () => void): () => void;
  /** Listens to what has changed up to a later moment: for whatever may follow what is seen at once.
   *  @returns what stops the listening */
  follow(listener: () => void): () => void;
}

/** A store that owns its state. `step` is pure: the same state and deed give the same next state; the same object means
 *  that nothing has changed and nobody is told.
 *  @param later when those who follow are told, of all changes until then at once */
export function createStore<State, Deed>(
  initial: State,
  step: (state: State, deed: Deed) => State,
  later: (call: () => void) => void,
): Store<State, Deed> {
  const listeners = new Set<() => void>();
  const followers = new Set<() => void>();
  let state = initial;
  let awaited = false;
  const tell = (): void => {
    awaited = false;
    followers.forEach((follower) => follower());
  };
  return {
    get: () => state,
    send(deed) {
      const next = step(state, deed);
      if (next === state) return;
      state = next;
      listeners.forEach((listener) => listener());
      if (!awaited) later(tell);
      awaited = true;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    follow(follower) {
      followers.add(follower);
      return () => followers.delete(follower);
    },
  };
}
