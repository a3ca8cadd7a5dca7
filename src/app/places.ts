import { installation as bakery } from '../../lessons/places/bakery.yaml?place';
import { compile, type Installation } from '../installation/index.ts';
import type { Place } from './desk.ts';

/** The places of Kestrel Yard, by the name they have in links. */
export const PLACES: Readonly<Record<string, Installation>> = { bakery };

const compiled = new Map<string, Place>();

/** A place of Kestrel Yard, compiled at the first call. @throws RangeError if there is none of this name */
export function placeOf(id: string): Place {
  const known = compiled.get(id);
  if (known) return known;
  const installation = PLACES[id];
  if (!installation) throw new RangeError(`placeOf: no place "${id}"`);
  const place = { id, title: installation.place, build: compile(installation) };
  compiled.set(id, place);
  return place;
}
