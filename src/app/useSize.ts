import { useLayoutEffect, useState, type RefObject } from 'react';

/** The inner size of an element and that of its words, CSS px. */
export interface Size {
  readonly width: number;
  readonly height: number;
  readonly font: number;
}

/** The size of an element, kept up to date. */
export function useSize(element: RefObject<HTMLElement | null>): Size {
  const [size, setSize] = useState<Size>({ width: 800, height: 110, font: 13 });
  useLayoutEffect(() => {
    const node = element.current;
    if (!node) return;
    const measure = () => {
      const { clientWidth: width, clientHeight: height } = node;
      const font = parseFloat(getComputedStyle(node).fontSize);
      setSize((before) =>
        before.width === width && before.height === height && before.font === font ? before : { width, height, font },
      );
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(node);
    return () => observer.disconnect();
  }, [element]);
  return size;
}
