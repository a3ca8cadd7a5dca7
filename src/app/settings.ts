import type { Vocabulary } from '../explain/index.ts';
import type { Theme } from '../scene/index.ts';

/** How the page is used on this computer. */
export interface Settings {
  readonly vocabulary: Vocabulary;
  readonly theme: Theme | 'system';
  readonly still: boolean;
  readonly sound: boolean;
  /** Single keys do things. */
  readonly keys: boolean;
}

const KEY = 'ohmward settings';

/** The settings kept on this computer; sound is always off at first, stillness follows the computer's wish. */
export function readSettings(): Settings {
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
  const fresh: Settings = { vocabulary: 'north-america', theme: 'system', still, sound: false, keys: true };
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return fresh;
    const theme = 'theme' in kept && (kept.theme === 'day' || kept.theme === 'dark') ? kept.theme : fresh.theme;
    const keys = !('keys' in kept && kept.keys === false);
    return { ...fresh, theme, keys };
  } catch {
    return fresh; // storage that may not be read changes nothing but this
  }
}

/** Keeps what outlives the page; where storage is refused nothing is kept, and nothing else is lost. */
export function keepSettings({ theme, keys }: Settings): void {
  try {
    localStorage.setItem(KEY, JSON.stringify({ theme, keys }));
  } catch {
    // the choice lasts as long as the page
  }
}

/** The palette in use now. */
export function themeOf({ theme }: Settings, prefersDark: boolean): Theme {
  return theme === 'system' ? (prefersDark ? 'dark' : 'day') : theme;
}
