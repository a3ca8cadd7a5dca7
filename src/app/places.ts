import { installation as bakery } from '../../lessons/places/bakery.yaml?place';
import { compile, type Installation } from '../installation/index.ts';
import type { Place } from './desk.ts';

const others = import.meta.glob<Installation>(['../../lessons/places/*.yaml', '!**/bakery.yaml'], {
  query: '?place',
  import: 'installation',
});
const titles = import.meta.glob<string>('../../lessons/places/*.yaml', {
  query: '?title',
  import: 'title',
  eager: true,
});

const idOf = (file: string): string => file.slice(file.lastIndexOf('/') + 1, -'.yaml'.length);
const files = new Map(Object.keys(others).map((file) => [idOf(file), file]));

/** The title of every place of Kestrel Yard by the name it has in links, the bakery first. */
export const PLACE_TITLES: ReadonlyMap<string, string> = new Map([
  ['bakery', bakery.place],
  ...Object.entries(titles).map(([file, title]) => [idOf(file), title] as const),
]);

/** The name that each place of Kestrel Yard has in links. */
export const PLACE_NAMES: readonly string[] = [...PLACE_TITLES.keys()];

const fetched: Record<string, Installation> = { bakery };

/** The places that are here, by the name they have in links: the bakery comes with the page, others once they are fetched. */
export const PLACES: Readonly<Record<string, Installation>> = fetched;

const compiled = new Map<string, Place>();

/** Fetches the place a link begins with, if it is one of Kestrel Yard and not here yet. What cannot be fetched stays away. */
export async function fetchPlace(fragment: string): Promise<void> {
  const id = fragment.replace(/^#/, '').split('/', 1)[0] ?? '';
  const read = Object.hasOwn(PLACES, id) ? undefined : others[files.get(id) ?? ''];
  const installation = await read?.().catch(() => undefined);
  if (installation !== undefined) fetched[id] = installation;
}

/** A place of Kestrel Yard that is here, compiled at the first call. @throws RangeError if there is none of this name */
export function placeOf(id: string): Place {
  const known = compiled.get(id);
  if (known) return known;
  const installation = PLACES[id];
  if (!installation) throw new RangeError(`placeOf: no place "${id}"`);
  const place = { id, title: installation.place, build: compile(installation) };
  compiled.set(id, place);
  return place;
}
