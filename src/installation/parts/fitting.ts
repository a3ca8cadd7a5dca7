import { z } from 'zod';
import type { PartKind } from '../plan.ts';

const schema = z.strictObject({ kind: z.literal('fitting') });

type Fitting = z.output<typeof schema>;

/** A metal thing that is no part of the wiring but can be touched or joined: one terminal, `metal`. */
export const fitting = {
  kind: 'fitting',
  schema,
  ends: 'metal',
  terminals: () => ['metal'],
  plan: () => ({ branches: [] }),
} satisfies PartKind<Fitting>;
