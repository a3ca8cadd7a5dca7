import { z } from 'zod';
import { checkElectrode, electrodeKeys, planElectrode } from '../electrode.ts';
import { plateShape } from '../electrodeShape.ts';
import type { PartKind } from '../plan.ts';

const schema = z
  .strictObject({ ...plateShape.partial().shape, kind: plateShape.shape.kind, ...electrodeKeys })
  .superRefine(checkElectrode(plateShape));

/** A buried square plate, one terminal `top`.
 *  @see H. B. Dwight, AIEE Trans. 55 (1936), round plate of the same area */
export const plate = {
  kind: 'plate',
  schema,
  ends: 'top',
  terminals: () => ['top'],
  plan: planElectrode,
} satisfies PartKind<z.output<typeof schema>>;
