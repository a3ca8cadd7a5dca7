import 'react';

declare module 'react' {
  interface CSSProperties {
    /** Custom properties of our own, set on elements for the style sheet. */
    readonly [property: `--${string}`]: string | number | undefined;
  }
}
