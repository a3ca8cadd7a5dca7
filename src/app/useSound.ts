import { useEffect, useRef, useState } from 'react';
import type { Depiction } from '../depiction/index.ts';
import type { Sound } from '../sound/index.ts';

const SHOWN_ms = 3500;

/** Lets the picture be heard while `on`. @returns the caption of what was last heard, empty after a while */
export function useSound(on: boolean, depiction: Depiction): string {
  const sound = useRef<Sound | null>(null);
  const latest = useRef(depiction);
  const [caption, setCaption] = useState('');
  useEffect(() => {
    latest.current = depiction;
    sound.current?.hear(depiction);
  }, [depiction]);
  useEffect(() => {
    if (!on) return;
    let gone = false;
    let timer = 0;
    void import('../sound/index.ts').then(({ openSound }) => {
      if (gone) return;
      const opened = openSound();
      let event = -Infinity;
      opened.captions(({ kind, text }) => {
        if (kind === 'hum' && performance.now() - event < SHOWN_ms) return; // what has just happened is said first
        if (kind !== 'hum') event = performance.now();
        setCaption(text);
        clearTimeout(timer);
        timer = window.setTimeout(() => setCaption(''), SHOWN_ms);
      });
      opened.on(true);
      opened.hear(latest.current);
      sound.current = opened;
    });
    return () => {
      gone = true;
      clearTimeout(timer);
      sound.current?.destroy();
      sound.current = null;
      setCaption('');
    };
  }, [on]);
  return caption;
}
