import { abs, phasor, sub } from '../electrics/index.ts';
import type { Build } from '../installation/index.ts';
import type { DeviceMoment, Interval } from '../scenario/index.ts';
import type { PartView, PersonView } from './depiction.ts';
import { posed, type Place, type Standing } from './place.ts';

const STEM = /\.svg$/;
/** Below this part of its working voltage a thing neither glows nor turns. */
const DEAD = 0.2;
/** Shares of its rated volts from which a lamp glares, and at which it does so fully (invented). */
const GLARES = { from: 1.05, fully: 1.3 };

/** Every drawing that stands in the picture now, in the order in which it is painted. */
export function partViews(build: Build, interval: Interval, place: Place, person: PersonView): readonly PartView[] {
  return place.standing
    .filter((standing) => appears(standing, place, interval))
    .flatMap((standing) =>
      standing.feet ? figure(standing, interval, person) : drawings(standing, build, interval, place),
    )
    .map((view, order) => ({ ...view, order, parallax: place.parallax[view.group] ?? 0 }));
}

type Drawing = Omit<PartView, 'order' | 'parallax'>;

function appears({ id, when }: Standing, { appears: shown }: Place, { conditions }: Interval): boolean {
  const needed = when ?? shown[id];
  return needed === undefined || conditions[needed] === 'yes' || Object.values(conditions).includes(needed);
}

function drawings(standing: Standing, build: Build, interval: Interval, place: Place): readonly Drawing[] {
  const { id, x, y, group } = standing;
  const plain = (file: string, suffix = ''): Drawing => ({
    id: id + suffix,
    drawing: file.replace(STEM, ''),
    x,
    y,
    group,
    opacity: 1,
    turning: false,
  });
  const lit = place.lit[id];
  if (lit) {
    const share = workingShare(build, interval, lit.by);
    const glow = { ...plain(lit.lit, ', lit'), opacity: share < DEAD ? 0 : Math.min(1, share ** 2) };
    return [plain(lit.dark), glow, ...(lit.glare ? [{ ...plain(lit.glare, ', glare'), opacity: glare(share) }] : [])];
  }
  const turned = place.turns[id];
  if (turned !== undefined)
    return [{ ...plain(standing.file), turning: workingShare(build, interval, turned) >= DEAD }];
  const overlays = Object.entries(standing.overlays ?? {}).filter(
    ([defect]) => interval.conditions[place.overlays[id]?.[defect] ?? ''] === 'yes',
  );
  return [plain(fileOf(standing, interval)), ...overlays.map(([defect, file]) => plain(file, `, ${defect}`))];
}

function glare(share: number): number {
  return Math.min(1, Math.max(0, (share - GLARES.from) / (GLARES.fully - GLARES.from)));
}

const DEVICE_POSES: Readonly<Record<DeviceMoment['state'], readonly string[]>> = {
  closed: ['closed', 'on'],
  open: ['open', 'tripped'],
  warning: ['warning', 'closed'],
  jammed: ['jammed', 'closed'],
  'not fitted': ['absent'],
};

function fileOf({ id, file, poses }: Standing, { devices, conditions }: Interval): string {
  const wanted = DEVICE_POSES[devices.find(({ device }) => device === id)?.state ?? 'closed'];
  const missing = conditions[`${id} missing`] === 'yes' ? ['missing'] : [];
  const found = [...missing, ...wanted].map((pose) => poses?.[pose]).find((drawn) => drawn !== undefined);
  return typeof found === 'string' ? found : file;
}

/** The person and what they stand in. */
function figure(standing: Standing, { conditions }: Interval, { pose }: PersonView): readonly Drawing[] {
  const drawn = posed(standing.poses ?? {}, pose);
  if (drawn === undefined || typeof drawn === 'string') return [];
  const shoes = Object.entries(standing.feet?.[drawn.feet] ?? {});
  const worn = shoes.find(([option]) => Object.values(conditions).includes(option)) ?? shoes[0];
  const view = (id: string, file: string): Drawing => ({
    id,
    drawing: file.replace(STEM, ''),
    x: drawn.x,
    y: drawn.y,
    group: standing.group,
    opacity: 1,
    turning: false,
  });
  return [...(worn ? [view(`${standing.id}, feet`, worn[1])] : []), view(standing.id, drawn.file)];
}

/** The share of its working voltage that an appliance gets while it is switched on; 0 when it is off. */
export function workingShare(build: Build, { solution }: Interval, part: string): number {
  const made = build.installation.parts[part];
  const index = build.branch(part);
  const branch = build.network.branches[index];
  if (made?.kind !== 'appliance' || !branch) return 0;
  const rated_V = made.voltage_V ?? (build.installation.region === 'iec' ? 230 : 120);
  const rated_A = made.power_W === undefined ? 0 : made.power_W / rated_V / made.power_factor;
  const volts = abs(sub(phasor(solution.volts, branch.from), phasor(solution.volts, branch.to)));
  return abs(phasor(solution.amperes, index)) > rated_A * 0.02 ? volts / rated_V : 0;
}
