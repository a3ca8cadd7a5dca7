import { useMemo } from 'react';
import type { Desk } from './desk.ts';
import { useDesk, useDeskStore } from './useDesk.ts';

/** What points at a thing: hover and focus for a while, a press for good. */
export interface Pointer {
  readonly onPointerEnter: () => void;
  readonly onPointerLeave: () => void;
  readonly onFocus: () => void;
  readonly onBlur: () => void;
  readonly onClick: () => void;
}

const NONE: readonly number[] = [];

/** The handlers that point at a thing. */
export function usePointer(id: string, parts: readonly string[], branches: readonly number[] = NONE): Pointer {
  const store = useDeskStore();
  return useMemo(() => {
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
}

/** The same with whether it is pointed at now, and whether for good. */
export function usePointing(
  id: string,
  parts: readonly string[],
  branches: readonly number[] = NONE,
): Pointer & { readonly lit: boolean; readonly held: boolean } {
  const lit = useDesk(({ pointed }) => isPointedAt(pointed, id, parts, branches));
  const held = useDesk(({ pointed }) => pointed?.id === id && pointed.held);
  return { lit, held, ...usePointer(id, parts, branches) };
}

/** The one selection across stage, ledger and profile: two things belong together when they share a part, or where both
 *  name branches, a branch. */
export function isPointedAt(
  pointed: Desk['pointed'],
  id: string,
  parts: readonly string[],
  branches: readonly number[] = NONE,
): boolean {
  if (pointed === null) return false;
  if (pointed.id === id) return true;
  if (pointed.branches.length > 0 && branches.length > 0)
    return pointed.branches.some((branch) => branches.includes(branch));
  return pointed.parts.some((part) => parts.includes(part));
}
