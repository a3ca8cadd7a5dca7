import { useMemo } from 'react';
import type { Desk } from './desk.ts';
import { useDesk, useDeskStore } from './useDesk.ts';

/** Whether a thing is pointed at, and the handlers that point at it: hover and focus for a while, a press for good. */
export interface Pointing {
  readonly lit: boolean;
  readonly held: boolean;
  readonly onPointerEnter: () => void;
  readonly onPointerLeave: () => void;
  readonly onFocus: () => void;
  readonly onBlur: () => void;
  readonly onClick: () => void;
}

/** The one selection across stage, ledger and profile. Two things belong together when they share a part, or where both
 *  name branches, a branch. */
export function usePointing(id: string, parts: readonly string[], branches: readonly number[] = []): Pointing {
  const store = useDeskStore();
  const lit = useDesk(({ pointed }) => pointed !== null && touches(pointed, id, parts, branches));
  const held = useDesk(({ pointed }) => pointed?.id === id && pointed.held);
  const handlers = useMemo(() => {
    const pointed = { id, parts, branches, held: false };
    const show = () => {
      if (!store.get().pointed?.held) store.send({ kind: 'point', pointed });
    };
    const hide = () => {
      const now = store.get().pointed;
      if (now?.id === id && !now.held) store.send({ kind: 'point', pointed: null });
    };
    const onClick = () => {
      const now = store.get().pointed;
      store.send({ kind: 'point', pointed: now?.id === id && now.held ? null : { ...pointed, held: true } });
    };
    return { onPointerEnter: show, onPointerLeave: hide, onFocus: show, onBlur: hide, onClick };
  }, [store, id, parts, branches]);
  return { lit, held, ...handlers };
}

function touches(
  pointed: NonNullable<Desk['pointed']>,
  id: string,
  parts: readonly string[],
  branches: readonly number[],
): boolean {
  if (pointed.id === id) return true;
  if (pointed.branches.length > 0 && branches.length > 0)
    return pointed.branches.some((branch) => branches.includes(branch));
  return pointed.parts.some((part) => parts.includes(part));
}
