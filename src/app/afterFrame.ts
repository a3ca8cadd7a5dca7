const HIDDEN_ms = 100; // a page that is not shown draws no frames

/** Calls once the next frame of the screen has been drawn, or, where none is drawn, soon. */
export function afterFrame(call: () => void): void {
  let timer = setTimeout(call, HIDDEN_ms);
  requestAnimationFrame(() => {
    clearTimeout(timer);
    timer = setTimeout(call);
  });
}
