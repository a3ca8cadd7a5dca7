import { abs, phasor } from '../electrics/index.ts';
import { capital, figure, label, quantity, say, STRAY_A, type Vocabulary } from '../explain/index.ts';
import type { Build, Part } from '../installation/index.ts';
import type { Interval } from '../scenario/index.ts';
import type { Hotspot, PersonView } from './depiction.ts';
import { workingShare } from './parts.ts';
import type { Place } from './place.ts';

/** Less than this on metal is nothing to speak of, V (invented). */
const LEAST_V = 10;
/** The most volts an appliance is meant for, as a share of its rated ones (IEC 60038:2009, +10 % at the supply terminals, from memory). */
const MOST_SHARE = 1.1;
/** The share of a person's height that is the head, with a hat on. */
const HEAD = 0.3;

/** What of a place says where its things can be pointed at. */
export type Marked = Pick<Place, 'plates' | 'targets' | 'ranks' | 'offers' | 'appears'>;

/** Everything in the picture that can be pointed at, from the winding on, each with what is to be said of it now. */
export function hotspots(
  build: Build,
  interval: Interval,
  place: Marked,
  metal: ReadonlyMap<string, number>,
  person: PersonView,
  vocabulary: Vocabulary,
): readonly Hotspot[] {
  return Object.entries(build.installation.parts).flatMap(([id, made]): Hotspot[] => {
    const plate = place.plates[id];
    const target = place.targets[id];
    if (!plate || !target || hidden(id, place, interval)) return [];
    const condition = place.offers[id];
    return [
      {
        id,
        name: label(id, vocabulary),
        detail: detailOf(id, made, build, interval, metal, person, vocabulary),
        plate,
        target,
        rank: place.ranks[id] ?? 3,
        prominent: place.ranks[id] === 1,
        ...(made.kind === 'person' ? { keepClear: { ...target, height: target.height * HEAD } } : {}),
        ...(condition !== undefined && condition in build.installation.conditions ? { condition } : {}),
      },
    ];
  });
}

function hidden(id: string, { appears }: Marked, { conditions }: Interval): boolean {
  const needed = appears[id];
  return needed !== undefined && conditions[needed] !== 'yes';
}

function detailOf(
  id: string,
  made: Part,
  build: Build,
  interval: Interval,
  metal: ReadonlyMap<string, number>,
  person: PersonView,
  vocabulary: Vocabulary,
): string {
  switch (made.kind) {
    case 'centre-tapped-transformer':
      return say('detail.owner', vocabulary, { power: quantity(made.rating_VA, 'VA') });
    case 'breaker':
    case 'residual-device':
    case 'rcbo':
    case 'afci':
    case 'adjustable-breaker':
    case 'fuse':
    case 'device-by-points':
    case 'insulation-monitor': {
      const device = interval.devices.find((one) => one.device === id);
      if (device?.state === 'not fitted') return say('detail.not-fitted', vocabulary);
      if (device?.state === 'warning') return say('detail.warning', vocabulary);
      if (device?.state === 'open') return say('detail.open', vocabulary);
      const carries = carried(device?.amperes ?? 0, vocabulary);
      return device?.state === 'jammed' ? joined(say('detail.jammed', vocabulary), carries) : carries;
    }
    case 'appliance': {
      const volts = metal.get(id) ?? 0;
      const share = workingShare(build, interval, id);
      const amperes = quantity(abs(phasor(interval.solution.amperes, build.branch(id))), 'A');
      const work = share > 0 ? say('detail.running', vocabulary, { amperes }) : say('detail.off', vocabulary);
      const rated = share > MOST_SHARE ? say('detail.share', vocabulary, { share: figure(share * 100) }) : '';
      return joined(above(volts, vocabulary), work, rated);
    }
    case 'fitting':
    case 'service-panel':
      return above(metal.get(id) ?? 0, vocabulary);
    case 'joint':
      if (interval.conditions[`${id} missing`] === 'yes') return say('detail.missing', vocabulary);
      return carried(abs(phasor(interval.solution.amperes, build.branch(id))), vocabulary);
    case 'cable':
      return cable(id, Object.keys(made.cores), build, interval, vocabulary);
    case 'rod':
    case 'rods':
    case 'strip':
    case 'ring':
    case 'plate':
    case 'grid':
    case 'pipe':
    case 'floor':
      return carried(abs(phasor(interval.solution.amperes, build.branch(id))), vocabulary);
    case 'person':
      return person.caption.replace(/^[^:]*: /, '') || say('detail.away', vocabulary);
    default:
      return '';
  }
}

function cable(id: string, cores: readonly string[], build: Build, interval: Interval, vocabulary: Vocabulary): string {
  const broken = Object.entries(build.installation.conditions).some(
    ([name, condition]) =>
      condition.kind === 'open' &&
      interval.conditions[name] === 'yes' &&
      (condition.at ?? condition.between?.join(' ') ?? '').includes(id),
  );
  const most = Math.max(...cores.map((core) => abs(phasor(interval.solution.amperes, build.branch(`${id}.${core}`)))));
  return joined(broken ? say('detail.broken', vocabulary) : '', carried(most, vocabulary));
}

function above(volts: number, vocabulary: Vocabulary): string {
  return volts >= LEAST_V ? say('detail.volts', vocabulary, { volts: quantity(volts, 'V') }) : '';
}

function carried(amperes: number, vocabulary: Vocabulary): string {
  return amperes >= STRAY_A ? say('detail.carries', vocabulary, { amperes: quantity(amperes, 'A') }) : '';
}

function joined(...texts: readonly string[]): string {
  return texts.filter((text) => text !== '').join(', ');
}

/** The same things as sentences, for those who do not see the picture. */
export function twin(spots: readonly Hotspot[]): readonly string[] {
  return spots.filter(({ detail }) => detail !== '').map(({ name, detail }) => `${capital(name)}: ${detail}.`);
}
