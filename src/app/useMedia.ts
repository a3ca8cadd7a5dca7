import { useSyncExternalStore } from 'react';

/** Whether the window is as a media query says. */
export function useMedia(query: string): boolean {
  return useSyncExternalStore(
    (listener) => {
      const media = matchMedia(query);
      media.addEventListener('change', listener);
      return () => media.removeEventListener('change', listener);
    },
    () => matchMedia(query).matches,
  );
}

/** True where everything stands in one column, as on a phone. */
export function useNarrow(): boolean {
  return useMedia('(width < 900px)');
}
