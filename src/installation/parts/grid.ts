import { z } from 'zod';
import { checkElectrode, electrodeKeys, planElectrode } from '../electrode.ts';
import { gridShape } from '../electrodeShape.ts';
import type { PartKind } from '../plan.ts';

const schema = z
  .strictObject({ ...gridShape.partial().shape, kind: gridShape.shape.kind, ...electrodeKeys })
  .superRefine(checkElectrode(gridShape));

/** A rectangular grid of wire under a yard, one terminal `top`.
 *  @see IEEE Std 80-2013 for the formulas that the numeric method is held against */
export const grid = {
  kind: 'grid',
  schema,
  ends: 'top',
  terminals: () => ['top'],
  plan: planElectrode,
} satisfies PartKind<z.output<typeof schema>>;
