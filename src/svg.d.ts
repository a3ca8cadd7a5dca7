/** A drawing's view box and the places of its shapes with an id `at-<name>`, in units of the view box, read at build time. */
declare module '*.svg?anchors' {
  export const viewBox: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  export const anchors: Readonly<Record<string, { readonly x: number; readonly y: number }>>;
}
