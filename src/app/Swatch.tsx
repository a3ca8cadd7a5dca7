import { memo } from 'react';
import type { WayKind } from '../explain/index.ts';

/** The four forms a current is drawn in. */
export type SwatchForm = 'load' | 'fault' | 'stray' | 'person';

/** The form of a way home: working current on the neutral is a load, on anything else it is where none belongs. */
export function formOf(way: WayKind, of: 'fault' | 'load'): SwatchForm {
  if (way === 'person') return 'person';
  if (way === 'soil' || way === 'pipe' || way === 'other') return 'stray';
  if (of === 'load') return way === 'neutral' || way === 'load' ? 'load' : 'stray';
  return way === 'load' ? 'load' : 'fault';
}

const CHEVRONS: Readonly<Record<'load' | 'fault', string>> = {
  load: 'M7 3.5l3 3-3 3M17 3.5l3 3-3 3M27 3.5l3 3-3 3',
  fault: 'M4 2.5l4 4-4 4M8.5 2.5l4 4-4 4M20 2.5l4 4-4 4M24.5 2.5l4 4-4 4',
};

/** A piece of ribbon as it lies in the picture, to be read beside a name. */
export const Swatch = memo(function Swatch({ form }: { readonly form: SwatchForm }) {
  return (
    <svg className={`swatch swatch-${form}`} viewBox="0 0 36 13" width="36" height="13" aria-hidden="true">
      {form === 'stray' ? (
        <path className="swatch-broken" d="M2 6.5h8M14 6.5h8M26 6.5h8" />
      ) : form === 'person' ? (
        <>
          <rect className="swatch-edge" x="1" y="1" width="34" height="11" rx="2" />
          <rect className="swatch-body" x="2" y="2" width="32" height="9" rx="1.5" />
          <rect className="swatch-core" x="2" y="5" width="32" height="3" />
        </>
      ) : (
        <>
          <rect
            className="swatch-body"
            x="1"
            y={form === 'fault' ? 0.5 : 2.5}
            width="34"
            height={form === 'fault' ? 12 : 8}
            rx="2"
          />
          <path className="swatch-chevrons" d={CHEVRONS[form]} />
        </>
      )}
    </svg>
  );
});
