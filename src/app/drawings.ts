import { use } from 'react';
import { enterDrawing, type DrawnPlace } from '../depiction/index.ts';

const places = import.meta.glob<DrawnPlace>('../../assets/places/*/layout.json', {
  query: '?drawn',
  import: 'default',
});
const sheets = import.meta.glob<Readonly<Record<string, string>>>('../../assets/places/*/layout.json', {
  query: '?sheets',
  import: 'default',
});
const fileOf = (drawing: string): string => `../../assets/places/${drawing}/layout.json`;

const coming = new Map<string, Promise<void>>();

/** Fetches where everything stands and runs in a drawing, if there is one of this name. What cannot be fetched stays
 *  undrawn; words stand in for it. */
export function fetchDrawing(drawing: string | undefined): Promise<void> {
  if (drawing === undefined) return Promise.resolve();
  const known = coming.get(drawing);
  if (known) return known;
  const made = (places[fileOf(drawing)]?.() ?? Promise.reject(new Error(`no drawing ${drawing}`)))
    .then((place) => enterDrawing(drawing, place))
    .catch((error: unknown) => console.info('This place has no picture; the words stand in for it.', error));
  coming.set(drawing, made);
  return made;
}

/** Holds a component back until the drawing of its place is here. It is asked for in every rendering, also when it has come:
 *  React goes on with a component that it held back only where that component asks again. */
export function useDrawing(drawing: string | undefined): void {
  if (drawing !== undefined) use(fetchDrawing(drawing));
}

/** Fetches the SVGs of a drawing, by their path under assets/ without the ending.
 *  @throws Error if nobody has drawn it or it cannot be fetched */
export async function fetchSheets(drawing: string): Promise<Readonly<Record<string, string>>> {
  const read = sheets[fileOf(drawing)];
  if (!read) throw new Error(`no drawing ${drawing}`);
  return read();
}
