import { z } from 'zod';
import { checkElectrode, electrodeKeys, planElectrode } from '../electrode.ts';
import { ringShape } from '../electrodeShape.ts';
import type { PartKind } from '../plan.ts';

const schema = z
  .strictObject({ ...ringShape.partial().shape, kind: ringShape.shape.kind, ...electrodeKeys })
  .superRefine(checkElectrode(ringShape));

/** A ring of wire round a building, one terminal `top`.
 *  @see IEEE Std 142 (after Dwight, 1936) */
export const ring = {
  kind: 'ring',
  schema,
  ends: 'top',
  terminals: () => ['top'],
  plan: planElectrode,
} satisfies PartKind<z.output<typeof schema>>;
