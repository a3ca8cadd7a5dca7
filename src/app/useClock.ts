import { useEffect, useRef } from 'react';
import { useDeskStore } from './useDesk.ts';

const LONGEST_FRAME_s = 0.25; // a page that was hidden does not jump ahead when it comes back

/** What is drawn in each frame of the screen. `wall_s` is the viewer's own time; it stands while nothing may move. */
export type OnFrame = (now: { readonly time_s: number; readonly slow: number; readonly wall_s: number }) => void;

/** The only clock: moves the moment shown while a run is running, and asks for a picture in every frame of the screen. */
export function useClock(onFrame: OnFrame): void {
  const store = useDeskStore();
  const draw = useRef(onFrame);
  useEffect(() => {
    draw.current = onFrame;
  });
  useEffect(() => {
    let wall_s = 0;
    let last_ms: number | null = null;
    let request = requestAnimationFrame(function frame(now_ms) {
      const passed_s = last_ms === null ? 0 : Math.min((now_ms - last_ms) / 1000, LONGEST_FRAME_s);
      last_ms = now_ms;
      if (store.get().playhead.running) store.send({ kind: 'pass', wall_s: passed_s });
      const { playhead, still } = store.get();
      if (!still) wall_s += passed_s;
      draw.current({ time_s: playhead.time_s, slow: playhead.slow, wall_s });
      request = requestAnimationFrame(frame);
    });
    return () => cancelAnimationFrame(request);
  }, [store]);
}
