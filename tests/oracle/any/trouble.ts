import type { Writing } from './writing.ts';

const SKINS = ['dry', 'water-wet', 'salt-wet'] as const;
const AREAS = ['large', 'medium', 'small'] as const;

/** Somebody who touches what they should not, on a floor of their own; perhaps a second one who takes hold of the first. */
export function anyPeople({ draw, parts, conditions, metal, places, ohm, told }: Writing): void {
  if (draw.likely(0.4)) return;
  told.push('person');
  const body = () => ({
    kind: 'person',
    percentile: draw.oneOf([5, 50, 95]),
    skin: draw.oneOf(SKINS),
    area: draw.oneOf(AREAS),
    size: draw.oneOf(['adult', 'small adult', 'child']),
  });
  const stand = (floor: string): string => {
    parts[floor] = {
      kind: 'floor',
      ...(draw.likely(0.5) ? { resistance_ohm: ohm(1, 1e6) } : { resistivity_ohm_m: draw.between(10, 1e5) }),
    };
    return floor;
  };
  const rescued = draw.likely(0.3);
  const [near, far] = places;
  parts.Ada = {
    ...body(),
    'right hand': draw.oneOf(metal),
    ...(draw.likely(0.4) && !rescued ? { 'left hand': draw.oneOf(metal) } : {}),
    ...(near !== undefined && draw.likely(0.7)
      ? { 'left foot': near, 'right foot': far }
      : draw.likely(0.8)
        ? { feet: stand('slab') }
        : { seat: draw.oneOf(metal) }),
    ...(draw.likely(0.1) ? { [draw.oneOf(['back', 'chest'])]: draw.oneOf(metal) } : {}),
    ...(rescued ? { 'held at': ['left hand'] } : {}),
  };
  if (draw.likely(0.5))
    conditions['shoes of Ada'] = {
      kind: 'footwear',
      person: 'Ada',
      per_foot_ohm: { bare: 0, shod: ohm(10, 1e7) },
      skin: { bare: 'water-wet' },
    };
  if (draw.likely(0.3))
    conditions['gloves of Ada'] = { kind: 'gloves', person: 'Ada', per_hand_ohm: { bare: 0, 'a glove': ohm(10, 1e7) } };
  if (draw.likely(0.2))
    conditions['mat of Ada'] = { kind: 'mat', person: 'Ada', both_feet_ohm: { none: 0, rubber: 'rubber mat' } };
  if (draw.likely(0.3))
    conditions['Ada touches'] = { kind: 'touching', person: 'Ada', limbs: { all: ['right hand'], nothing: [] } };
  if (!rescued) return;
  told.push('two people');
  parts.Ben = {
    ...body(),
    'right hand': 'Ada.left hand',
    feet: stand('yard floor'),
    ...(draw.likely(0.3) ? { 'left hand': draw.oneOf(metal) } : {}),
  };
}

/** What may be the matter: faults, links, open and loose conductors. */
export function anyTrouble({ draw, conditions, metal, conductors, ohm }: Writing): void {
  const two = (): readonly [string, string] => {
    const one = draw.oneOf(metal);
    return [one, draw.oneOf([...metal.filter((other) => other !== one), 'earth'])];
  };
  for (const which of ['one', 'two', 'three']) {
    if (draw.likely(0.6))
      conditions[`fault ${which}`] = {
        kind: 'insulation-fault',
        between: two(),
        resistance_ohm: { solid: ohm(1e-3, 0.1), poor: ohm(1, 1e5) },
      };
    if (draw.likely(0.2)) conditions[`open ${which}`] = { kind: 'open', at: draw.oneOf(conductors) };
    if (draw.likely(0.2))
      conditions[`loose ${which}`] = { kind: 'loose', at: draw.oneOf(conductors), resistance_ohm: ohm(0.1, 1000) };
    if (draw.likely(0.1)) conditions[`link ${which}`] = { kind: 'link', between: two() };
  }
}
