import { useEffect, useRef } from 'react';

/** What each key does, by the name the browser gives it; `ctrl+z` with the control or command key. */
export type Keys = Readonly<Record<string, () => void>>;

const WRITING = 'input:not([type=range]):not([type=radio]):not([type=checkbox]), textarea, select, [contenteditable]';

/** Listens to single keys while `on`. A key that the focused control itself needs stays with it: letters in a field, the
 *  space bar on a button reached by keyboard, arrows on a slider. */
export function useKeys(keys: Keys, on: boolean): void {
  const latest = useRef(keys);
  useEffect(() => {
    latest.current = keys;
  });
  useEffect(() => {
    if (!on) return;
    function onKeyDown(event: KeyboardEvent) {
      const target = event.target instanceof Element ? event.target : null;
      if (event.defaultPrevented || event.altKey || document.querySelector('dialog[open]')) return;
      if (target?.matches(WRITING)) return;
      const control = event.ctrlKey || event.metaKey;
      const deed = latest.current[`${control ? 'ctrl+' : ''}${event.key.toLowerCase()}`];
      if (!deed) return;
      if (event.key.startsWith('Arrow') && target?.matches('input')) return;
      if (event.key === ' ' && target?.matches('button:focus-visible, summary:focus-visible, input:focus-visible'))
        return;
      event.preventDefault();
      deed();
    }
    addEventListener('keydown', onKeyDown);
    return () => removeEventListener('keydown', onKeyDown);
  }, [on]);
}
