import { useSyncExternalStore } from 'react';

const query = () => matchMedia('(max-width: 899px)');

/** True where everything stands in one column, as on a phone. */
export function useNarrow(): boolean {
  return useSyncExternalStore(
    (listener) => {
      const media = query();
      media.addEventListener('change', listener);
      return () => media.removeEventListener('change', listener);
    },
    () => query().matches,
  );
}
