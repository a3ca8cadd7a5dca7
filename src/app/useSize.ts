import { useLayoutEffect, useState, type RefObject } from 'react';

/** The inner size of an element, CSS px, kept up to date. */
export function useSize(element: RefObject<HTMLElement | null>): { readonly width: number; readonly height: number } {
  const [size, setSize] = useState({ width: 800, height: 110 });
  useLayoutEffect(() => {
    const node = element.current;
    if (!node) return;
    const measure = () =>
      setSize((before) =>
        before.width === node.clientWidth && before.height === node.clientHeight
          ? before
          : { width: node.clientWidth, height: node.clientHeight },
      );
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(node);
    return () => observer.disconnect();
  }, [element]);
  return size;
}
