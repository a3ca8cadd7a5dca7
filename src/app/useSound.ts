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
      opened.captions(({ text }) => {
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
