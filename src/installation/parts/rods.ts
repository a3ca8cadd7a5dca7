import { z } from 'zod';
import { checkElectrode, electrodeKeys, planElectrode } from '../electrode.ts';
import { rodsShape } from '../electrodeShape.ts';
import type { PartKind } from '../plan.ts';

const schema = z
  .strictObject({ ...rodsShape.partial().shape, kind: rodsShape.shape.kind, ...electrodeKeys })
  .superRefine(checkElectrode(rodsShape));

/** Several equal rods joined by metal, one terminal `top`: each raises the soil under the others, so that they halve nothing.
 *  @see IEEE Std 142 (after Dwight, 1936), mutual resistance of two rods */
export const rods = {
  kind: 'rods',
  schema,
  ends: 'top',
  terminals: () => ['top'],
  plan: planElectrode,
} satisfies PartKind<z.output<typeof schema>>;
