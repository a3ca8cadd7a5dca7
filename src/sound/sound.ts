import { Howl } from 'howler';
import breaker from '../../assets/sounds/breaker.wav?url';
import contact from '../../assets/sounds/contact.wav?url';
import gfci from '../../assets/sounds/gfci.wav?url';
import hum50 from '../../assets/sounds/hum-50.wav?url';
import hum60 from '../../assets/sounds/hum-60.wav?url';
import type { Depiction, Sounding } from '../depiction/index.ts';
import { newlyHeard, type Heard } from './heard.ts';

const FILES = { breaker, contact, gfci } as const;
const HUM_VOLUME = 0.35; // of the file's own peak, at the highest level
const HUM_FADE_ms = 180;

/** A caption for something heard, or for a hum that has changed; shown whether or not the sound itself is on. */
export interface Caption {
  readonly kind: Sounding['kind'] | 'hum';
  readonly text: string;
  /** False while sound is off. */
  readonly audible: boolean;
}

/** What is heard of the picture; silent until it is turned on. */
export interface Sound {
  /** Turns sound on or off; call with true from a press of a button, as browsers demand. */
  on(enabled: boolean): void;
  /** Takes the moment shown now: plays what has just happened and sets the hum. */
  hear(depiction: Depiction): void;
  /** @returns what stops the captions */
  captions(listener: (caption: Caption) => void): () => void;
  destroy(): void;
}

/** Opens the sound of the scene. Loads no file before it is turned on for the first time. */
export function openSound(): Sound {
  const listeners = new Set<(caption: Caption) => void>();
  const struck = new Map<Sounding['kind'], Howl>();
  let hum: { readonly frequency_Hz: number; readonly howl: Howl } | null = null;
  let enabled = false;
  let heard: Heard | null = null;
  let last: Depiction | null = null;
  let humSaid = '';

  function say(kind: Caption['kind'], text: string): void {
    if (text) for (const listener of listeners) listener({ kind, text, audible: enabled });
  }

  function setHum(depiction: Depiction): void {
    const volume = enabled ? depiction.hum.level * HUM_VOLUME : 0;
    if (hum && hum.frequency_Hz !== depiction.frequency_Hz) {
      hum.howl.unload();
      hum = null;
    }
    if (!hum) {
      if (volume === 0) return;
      const howl = new Howl({
        src: [depiction.frequency_Hz < 55 ? hum50 : hum60],
        format: ['wav'],
        loop: true,
        volume: 0,
      });
      hum = { frequency_Hz: depiction.frequency_Hz, howl };
      howl.play();
    }
    hum.howl.fade(hum.howl.volume(), volume, HUM_FADE_ms);
  }

  function play(kind: Sounding['kind']): void {
    let howl = struck.get(kind);
    if (!howl) {
      howl = new Howl({ src: [FILES[kind]], format: ['wav'] });
      struck.set(kind, howl);
    }
    howl.play();
  }

  return {
    on(turnedOn) {
      enabled = turnedOn;
      if (!turnedOn) for (const howl of struck.values()) howl.stop();
      if (last) setHum(last);
    },
    hear(depiction) {
      const news = newlyHeard(heard, depiction);
      heard = news.heard;
      last = depiction;
      if (depiction.hum.caption !== humSaid) {
        humSaid = depiction.hum.caption;
        say('hum', humSaid);
      }
      if (news.sound) {
        if (enabled) play(news.sound.kind);
        say(news.sound.kind, news.sound.caption);
      }
      if (enabled || hum) setHum(depiction);
    },
    captions(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    destroy() {
      listeners.clear();
      hum?.howl.unload();
      for (const howl of struck.values()) howl.unload();
      struck.clear();
    },
  };
}
