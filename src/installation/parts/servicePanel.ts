import { z } from 'zod';
import type { PartKind } from '../plan.ts';

const schema = z.strictObject({ kind: z.literal('service-panel') });

type ServicePanel = z.output<typeof schema>;

/** The busbars of a panel: a, b, neutral bar and earth bar. What bonds the last two is a part of its own. */
export const servicePanel = {
  kind: 'service-panel',
  schema,
  ends: 'a, b, neutral bar, earth bar',
  terminals: () => ['a', 'b', 'neutral bar', 'earth bar'],
  plan: () => ({ branches: [] }),
} satisfies PartKind<ServicePanel>;
