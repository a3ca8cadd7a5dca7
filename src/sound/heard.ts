import type { Depiction, Sounding } from '../depiction/index.ts';

/** Which run was shown last, and which moment of it. */
export interface Heard {
  readonly story: string;
  readonly time_s: number;
}

/** What a new moment lets be heard: forward in time the last event that was passed (a jump over several sounds once),
 *  backward nothing, and nothing at the very first picture. */
export function newlyHeard(
  before: Heard | null,
  { sounds, time_s }: Pick<Depiction, 'sounds' | 'time_s'>,
): { readonly heard: Heard; readonly sound: Sounding | undefined } {
  const heard = { story: sounds.map(({ id }) => id).join('\n'), time_s };
  const since = before?.story === heard.story ? before.time_s : -Infinity;
  const sound = before ? sounds.findLast((event) => event.time_s > since && event.time_s <= time_s) : undefined;
  return { heard, sound };
}
