import { useEffect } from 'react';
import type { Deed, Desk } from './desk.ts';
import type { Store } from './store.ts';

const HIDDEN_ms = 100; // a page that is not shown draws no frames

/** Lets words and plates follow a new run once the frame that shows it has been drawn, so that a press is answered by the
 *  picture first. */
export function useTelling(store: Store<Desk, Deed>): void {
  useEffect(() => {
    let frame = 0;
    let timer = 0;
    const tell = () => {
      cancelAnimationFrame(frame);
      clearTimeout(timer);
      frame = timer = 0;
      store.send({ kind: 'tell' });
    };
    const stop = store.subscribe(() => {
      const { told, timeline } = store.get();
      if (told === timeline || timer !== 0) return;
      timer = window.setTimeout(tell, HIDDEN_ms);
      frame = requestAnimationFrame(() => {
        clearTimeout(timer);
        timer = window.setTimeout(tell);
      });
    });
    return () => {
      stop();
      cancelAnimationFrame(frame);
      clearTimeout(timer);
    };
  }, [store]);
}
