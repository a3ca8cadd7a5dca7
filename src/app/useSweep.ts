import { useCallback, useEffect, useRef, useState } from 'react';
import type { SweepAnswer, SweepTask } from './sweep.worker.ts';

/** Where a sweep stands. */
export interface Sweeping {
  /** 0 to 1 while it runs; undefined at rest. */
  readonly share: number | undefined;
  readonly answer: SweepAnswer | undefined;
  start(task: SweepTask): void;
  cancel(): void;
}

/** Sweeps beside the page, which stays quick; a new one, or leaving, ends the one before. */
export function useSweep(): Sweeping {
  const worker = useRef<Worker | null>(null);
  const [share, setShare] = useState<number>();
  const [answer, setAnswer] = useState<SweepAnswer>();
  const cancel = useCallback(() => {
    worker.current?.terminate();
    worker.current = null;
    setShare(undefined);
  }, []);
  const start = useCallback(
    (task: SweepTask) => {
      cancel();
      setAnswer(undefined);
      setShare(0);
      const made = new Worker(new URL('./sweep.worker.ts', import.meta.url), { type: 'module' });
      worker.current = made;
      made.addEventListener('message', ({ data }: MessageEvent<SweepAnswer>) => {
        if (data.kind === 'progress') {
          setShare(data.share);
          return;
        }
        setAnswer(data);
        cancel();
      });
      made.addEventListener('error', ({ message }) => {
        setAnswer({ kind: 'failed', reason: message });
        cancel();
      });
      made.postMessage(task);
    },
    [cancel],
  );
  useEffect(() => cancel, [cancel]);
  return { share, answer, start, cancel };
}
