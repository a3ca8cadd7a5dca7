import { severity } from '../body/index.ts';
import { name, quantity, say, type Vocabulary } from '../explain/index.ts';
import type { Interval, Timeline } from '../scenario/index.ts';
import type { PersonView } from './depiction.ts';
import { LEAST_A } from './flow.ts';

/** From this severity of the zones of IEC 60479-1 on somebody may not stand up again: AC-4.2. */
const GRAVE = 4;

/** How the first person of the installation stands at this interval, and what is said of it. */
export function personView(timeline: Timeline, interval: Interval, vocabulary: Vocabulary): PersonView {
  const moment = interval.people[0];
  if (!moment) return { pose: 'away', reaction: 'calm', caption: '' };
  const who = name(moment.person, vocabulary);
  const earlier = timeline.intervals.filter(({ start_s }) => start_s < interval.start_s);
  const shocked = earlier.some(({ people }) => (people[0]?.body_A ?? 0) >= LEAST_A);
  const felt = moment.body_A >= LEAST_A;
  const both = moment.touching.includes('left hand');
  if (felt) {
    const values = { touch: quantity(moment.touch_V, 'V'), amperes: quantity(moment.body_A, 'A') };
    const caption = `${who}: ${say('detail.touch', vocabulary, values)}`;
    if (moment.letGo) return { pose: both ? 'both' : 'hand', reaction: 'startled', caption };
    return { pose: both ? 'held both' : 'held', reaction: 'held', caption };
  }
  const caption = `${who}: ${say('detail.away', vocabulary)}`;
  if (shocked && severity(moment.zone) >= GRAVE) return { pose: 'fallen', reaction: 'fallen', caption };
  if (shocked) return { pose: 'startle', reaction: 'startled', caption };
  if (moment.touching.length === 0) return { pose: 'away', reaction: 'calm', caption };
  return { pose: both ? 'both' : 'hand', reaction: 'calm', caption: '' };
}
