import { limitsAt } from '../body/index.ts';
import type { Area, Body, Contact, Limb, Skin } from '../body/index.ts';
import type { PersonInfo } from './build.ts';
import type { Conditions } from './conditions.ts';
import type { Installation } from './installation.ts';
import type { PlannedPerson } from './plan.ts';
import { worn_ohm } from './worn.ts';

/** What a condition puts between the skin of some places and the things they touch. */
interface Wear {
  readonly each_ohm: number;
  readonly skin?: Skin | undefined;
  readonly area?: Area | undefined;
}

/** A person with the conditions that say what is touched and what is worn. */
export function personInfo(
  name: string,
  person: PlannedPerson,
  installation: Installation,
  branch: (name: string) => number,
  node: (terminal: string) => number,
): PersonInfo {
  const conditions = Object.entries(installation.conditions);
  const stances = conditions.flatMap(([condition, what]) =>
    what.kind === 'touching' && what.person === name ? [{ condition, what }] : [],
  );
  const coverings = conditions.flatMap(([condition, what]) =>
    (what.kind === 'footwear' || what.kind === 'gloves' || what.kind === 'mat') && what.person === name
      ? [{ condition, what }]
      : [],
  );
  const direct = installation.frequency_Hz === 0;
  const body: Body = { percentile: person.percentile, skin: person.skin, area: person.area, direct };
  return {
    name,
    trunk: node(person.trunk),
    limbs: person.limbs.map(({ limb, branch: own, touches, into, held }) => ({
      limb,
      branch: branch(own),
      node: node(touches),
      into,
      held: held === true,
    })),
    limits: limitsAt(installation.frequency_Hz, person.size),
    contacts(chosen) {
      const touching =
        stances.length === 0
          ? person.limbs.map(({ limb }) => limb)
          : stances.flatMap(({ condition, what }) => what.limbs[chosen[condition] ?? what.options[0] ?? ''] ?? []);
      const worn = coverings.map(({ condition, what }) => ({
        what,
        option: chosenOf(chosen, condition, what.options),
      }));
      const contacts = person.limbs.flatMap(({ limb, held }): Contact[] => {
        if (held !== true && !touching.includes(limb)) return [];
        const wears = worn.flatMap(({ what, option }) => wearOn(limb, what, option));
        const skin = wears.find((wear) => wear.skin !== undefined)?.skin;
        const area = wears.find((wear) => wear.area !== undefined)?.area;
        // Two shoes side by side on one floor.
        const beside = limb === 'feet' ? 2 : 1;
        return [
          {
            limb,
            outside_ohm: wears.reduce((sum, { each_ohm }) => sum + each_ohm / beside, 0),
            ...(skin === undefined ? {} : { skin }),
            ...(area === undefined ? {} : { area }),
            ...(held === true ? { held } : {}),
          },
        ];
      });
      return { body, contacts };
    },
  };
}

type Covering = Extract<Installation['conditions'][string], { readonly kind: 'footwear' | 'gloves' | 'mat' }>;

function wearOn(limb: Limb, what: Covering, option: string): readonly Wear[] {
  const isFoot = limb === 'feet' || limb === 'right foot' || limb === 'left foot';
  const isHand = limb === 'right hand' || limb === 'left hand';
  switch (what.kind) {
    case 'footwear':
      return isFoot ? [{ each_ohm: worn_ohm(what.per_foot_ohm[option] ?? 0), skin: what.skin?.[option] }] : [];
    case 'gloves':
      return isHand
        ? [
            {
              each_ohm: worn_ohm(what.per_hand_ohm[option] ?? 0),
              skin: what.skin?.[option],
              area: what.area?.[option],
            },
          ]
        : [];
    case 'mat':
      // Written for both feet together: each has twice of it.
      return isFoot ? [{ each_ohm: 2 * worn_ohm(what.both_feet_ohm[option] ?? 0) }] : [];
  }
}

function chosenOf(chosen: Conditions, condition: string, options: readonly string[]): string {
  return chosen[condition] ?? options[0] ?? '';
}
