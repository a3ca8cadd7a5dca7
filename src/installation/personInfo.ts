import type { Contact, Limb } from '../body/index.ts';
import type { PersonInfo } from './build.ts';
import type { Installation } from './installation.ts';
import type { PlannedPerson } from './plan.ts';

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
  const shoes = conditions.flatMap(([condition, what]) =>
    what.kind === 'footwear' && what.person === name ? [{ condition, what }] : [],
  );
  const all = person.limbs.map(({ limb }) => limb);
  return {
    name,
    trunk: node(person.trunk),
    limbs: person.limbs.map(({ limb, branch: own, touches }) => ({ limb, branch: branch(own), node: node(touches) })),
    contacts(chosen) {
      const touching =
        stances.length === 0
          ? all
          : stances.flatMap(({ condition, what }) => what.limbs[chosen[condition] ?? what.options[0] ?? ''] ?? []);
      const worn = shoes.map(({ condition, what }) => {
        const option = chosen[condition] ?? what.options[0] ?? '';
        return { per_foot_ohm: what.per_foot_ohm[option] ?? 0, skin: what.skin?.[option] };
      });
      const contact = (limb: Limb): Contact => {
        if (limb !== 'feet') return { limb, outside_ohm: 0 };
        // Two shoes side by side on one floor.
        const outside_ohm = worn.reduce((sum, { per_foot_ohm }) => sum + per_foot_ohm / 2, 0);
        const skin = worn.find((shoe) => shoe.skin !== undefined)?.skin;
        return skin === undefined ? { limb, outside_ohm } : { limb, outside_ohm, skin };
      };
      return {
        body: { percentile: person.percentile, skin: person.skin },
        contacts: all.filter((limb) => touching.includes(limb)).map(contact),
      };
    },
  };
}
