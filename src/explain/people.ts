import type { Limb } from '../body/index.ts';
import type { Build } from '../installation/index.ts';
import type { Interval, PersonMoment, Timeline } from '../scenario/index.ts';
import type { Finding } from './finding.ts';

/** Somebody who is free again sooner was not held: the hand had no time to try, s (a reaction time, from memory). */
const HELD_S = 0.5;
/** Below this there is no current to speak of, A. */
const NO_CURRENT_A = 1e-5;

/** What each person touches, feels and suffers, and when it ends. */
export function peopleFindings(timeline: Timeline): readonly Finding[] {
  return [...timeline.build.people.flatMap(({ name }) => onePerson(timeline, name)), ...happenings(timeline)];
}

function onePerson({ build, intervals }: Timeline, person: string): readonly Finding[] {
  const first = intervals.findIndex((interval) => touching(interval, person) !== undefined);
  const at_s = intervals[first]?.start_s;
  if (at_s === undefined) {
    const struck = intervals.find(({ because }) => because.kind === 'fault-strikes');
    return struck === undefined
      ? []
      : [{ kind: 'person-spared', at_s: struck.start_s, person, because: 'away', body_A: 0 }];
  }
  const felt = intervals.findIndex((interval) => feels(touching(interval, person)));
  const interval = intervals[felt];
  const moment = interval === undefined ? undefined : touching(interval, person);
  if (interval === undefined || moment === undefined) {
    const body_A = Math.max(...intervals.map((each) => touching(each, person)?.body_A ?? 0));
    return [
      {
        kind: 'person-spared',
        at_s,
        person,
        because: body_A < NO_CURRENT_A ? 'no-current' : 'imperceptible',
        body_A,
        perception_A: Math.min(...intervals.map((each) => touching(each, person)?.perception_A ?? Infinity)),
      },
    ];
  }
  const { prospective_V, touch_V, body_A, heart_A, zone, letGo, limbs_A } = moment;
  const until_s = endOf(intervals, person, felt);
  const told = { at_s: interval.start_s, person, until_s };
  const hand_A = Math.max(limbs_A['right hand'] ?? 0, limbs_A['left hand'] ?? 0);
  const holding = heldBy(build, moment);
  return [
    {
      kind: 'person-feels',
      ...told,
      touching: moment.touching,
      ...(holding === undefined ? {} : { holding }),
      prospective_V,
      touch_V,
      ...acrossOf(build, interval, moment),
      body_A,
      heart_A,
      zone,
      letGo,
    },
    ...(letGo || until_s - interval.start_s < HELD_S
      ? []
      : [{ kind: 'person-held', ...told, hand_A, letGo_A: limitsOf(build, person) } as const]),
  ];
}

/** Up to which current through the hand everybody can let go, A. */
function limitsOf({ people }: Build, person: string): number {
  return people.find(({ name }) => name === person)?.limits.letGo_A ?? 0;
}

/** Between which two of three or more places the volts are largest, each behind what is worn there. */
function acrossOf(
  { people, network }: Build,
  { solution }: Interval,
  { person, touching: places, contacts }: PersonMoment,
): { readonly across?: readonly [Limb, Limb] } {
  const own = people.find(({ name }) => name === person);
  if (own === undefined || places.length < 3) return {};
  const skins = own.limbs.flatMap(({ limb, branch, node }) => {
    if (!places.includes(limb)) return [];
    // Along the limb the current counts from `from`; what is worn lies between the thing and the skin.
    const out = network.branches[branch]?.from === node ? -1 : 1;
    const worn_ohm = contacts.find((contact) => contact.limb === limb)?.outside_ohm ?? 0;
    const behind = (volts: Float64Array, amperes: Float64Array) =>
      (volts[node] ?? 0) + out * worn_ohm * (amperes[branch] ?? 0);
    const re = behind(solution.volts.re, solution.amperes.re);
    return [{ limb, re, im: behind(solution.volts.im, solution.amperes.im) }];
  });
  const pairs = skins.flatMap((one, index) =>
    skins.slice(index + 1).map((other) => ({
      pair: [one.limb, other.limb] as const,
      volts: Math.hypot(one.re - other.re, one.im - other.im),
    })),
  );
  const [largest] = pairs.toSorted((one, other) => other.volts - one.volts);
  return largest === undefined ? {} : { across: largest.pair };
}

function happenings({ intervals }: Timeline): readonly Finding[] {
  return intervals.flatMap(({ because, start_s, people }): Finding[] => {
    if (because.kind === 'person-released') return [{ kind: 'person-released', at_s: start_s, person: because.person }];
    if (because.kind !== 'zone-reached') return [];
    const heart_A = people.find(({ person }) => person === because.person)?.heart_A ?? 0;
    return [{ kind: 'zone-reached', at_s: start_s, person: because.person, zone: because.zone, heart_A }];
  });
}

function touching({ people }: Interval, person: string): PersonMoment | undefined {
  return people.find((moment) => moment.person === person && moment.touching.length > 0);
}

/** Whom somebody takes hold of: the other's place there touches nothing else. */
function heldBy({ people }: Build, { person, touching: places }: PersonMoment): string | undefined {
  const own = people.find(({ name }) => name === person);
  const touched = own?.limbs.filter(({ limb }) => places.includes(limb)).map(({ node }) => node) ?? [];
  return people.find(
    ({ name, limbs }) => name !== person && limbs.some(({ node, held }) => held && touched.includes(node)),
  )?.name;
}

function feels(moment: PersonMoment | undefined): boolean {
  return moment !== undefined && moment.body_A > moment.perception_A;
}

/** When the current through somebody is over. */
function endOf(intervals: readonly Interval[], person: string, from: number): number {
  const over = intervals.slice(from).find((interval) => !feels(touching(interval, person)));
  return over?.start_s ?? Infinity;
}
