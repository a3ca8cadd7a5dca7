import type { ReactNode } from 'react';

/** A hatched cover over something the room is asked about first. */
export function Covered({ children }: { readonly children: ReactNode }) {
  return (
    <div className="covered">
      <span>{children}</span>
    </div>
  );
}
