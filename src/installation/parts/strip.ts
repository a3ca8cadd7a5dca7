import { z } from 'zod';
import { checkElectrode, electrodeKeys, planElectrode } from '../electrode.ts';
import { stripShape } from '../electrodeShape.ts';
import type { PartKind } from '../plan.ts';

const schema = z
  .strictObject({ ...stripShape.partial().shape, kind: stripShape.shape.kind, ...electrodeKeys })
  .superRefine(checkElectrode(stripShape));

/** A straight strip or wire in a trench, one terminal `top`.
 *  @see IEEE Std 142 (after Dwight, 1936) */
export const strip = {
  kind: 'strip',
  schema,
  ends: 'top',
  terminals: () => ['top'],
  plan: planElectrode,
} satisfies PartKind<z.output<typeof schema>>;
