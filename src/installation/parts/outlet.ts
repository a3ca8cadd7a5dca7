import { z } from 'zod';
import type { PartKind } from '../plan.ts';

const schema = z.strictObject({ kind: z.literal('outlet') });

type Outlet = z.output<typeof schema>;

/** A socket outlet: three terminals where conductors and plug meet; each meeting is a join. */
export const outlet = {
  kind: 'outlet',
  schema,
  ends: 'line, neutral, protective',
  terminals: () => ['line', 'neutral', 'protective'],
  plan: () => ({ branches: [] }),
} satisfies PartKind<Outlet>;
