import { z } from 'zod';
import { comparing, comparingEnds, knownConductors, through } from '../poles.ts';
import { resistance_ohm } from '../quantity.ts';
import { residualKeys, residualSettings } from '../residualSetting.ts';
import type { PartKind } from '../plan.ts';

const { residual_family: family, ...settings } = residualKeys;

const schema = z
  .strictObject({
    kind: z.literal('residual-device'),
    family,
    ...settings,
    ...through,
    resistance_ohm: resistance_ohm.default(0.002).describe('of one pole, contacts and coil'),
  })
  .superRefine(knownConductors);

type ResidualDevice = z.output<typeof schema>;

/** A device that compares what leaves on some conductors with what comes home on the others, and opens them:
 *  `<part>.<pole>` each from its `.supply` to its `.load`. Not fitted, it is a piece of wire. */
export const residualDevice = {
  kind: 'residual-device',
  schema,
  ends: 'line.supply, line.load, neutral.supply, neutral.load, or those of its poles',
  terminals: (part) => comparingEnds(part),
  mustJoin: (part) => comparingEnds(part),
  plan(name, part, { region }) {
    const { branches, poles, residual } = comparing(name, part, part.resistance_ohm);
    const settings = residualSettings({ ...part, residual_family: part.family }, region);
    return { branches, device: { kind: 'residual-device', poles, residual, settings } };
  },
} satisfies PartKind<ResidualDevice>;
