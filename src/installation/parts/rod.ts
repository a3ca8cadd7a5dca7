import { z } from 'zod';
import { checkElectrode, electrodeKeys, planElectrode } from '../electrode.ts';
import { rodShape } from '../electrodeShape.ts';
import type { PartKind } from '../plan.ts';

const schema = z
  .strictObject({ ...rodShape.partial().shape, kind: rodShape.shape.kind, ...electrodeKeys })
  .superRefine(checkElectrode(rodShape));

/** A driven rod, one terminal `top`: its resistance to remote earth from geometry and soil, or measured.
 *  @see IEEE Std 142 (after Dwight, 1936): ρ/(2πL)·(ln(4L/a) − 1) */
export const rod = {
  kind: 'rod',
  schema,
  ends: 'top',
  terminals: () => ['top'],
  plan: planElectrode,
} satisfies PartKind<z.output<typeof schema>>;
