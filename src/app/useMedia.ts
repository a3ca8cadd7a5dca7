import { useCallback, useSyncExternalStore } from 'react';

const known = new Map<string, MediaQueryList>();

/** Whether the window is as a media query says. */
export function useMedia(query: string): boolean {
  const subscribe = useCallback(
    (listener: () => void) => {
      const media = mediaOf(query);
      media.addEventListener('change', listener);
      return () => media.removeEventListener('change', listener);
    },
    [query],
  );
  return useSyncExternalStore(subscribe, () => mediaOf(query).matches);
}

/** True where everything stands in one column, as on a phone. */
export function useNarrow(): boolean {
  return useMedia('(width < 900px)');
}

function mediaOf(query: string): MediaQueryList {
  const media = known.get(query) ?? matchMedia(query);
  known.set(query, media);
  return media;
}
