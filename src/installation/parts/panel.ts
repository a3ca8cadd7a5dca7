import { z } from 'zod';
import type { PartKind } from '../plan.ts';

const schema = z.strictObject({
  kind: z.literal('panel'),
  lines: z.literal([1, 2, 3]).default(2).describe('how many: a; a and b; a, b and c'),
  neutral: z.boolean().default(true).describe('false: no neutral bar, where no neutral is distributed'),
});

type Panel = z.output<typeof schema>;

/** The busbars of a sub-panel or distribution board. Nothing joins neutral bar and earth bar unless a part or a condition does. */
export const panel = {
  kind: 'panel',
  schema,
  ends: 'a, b, c (as many as it has lines), neutral bar (if it has one), earth bar',
  terminals: (part) => [...['a', 'b', 'c'].slice(0, part.lines), ...(part.neutral ? ['neutral bar'] : []), 'earth bar'],
  plan: () => ({ branches: [] }),
} satisfies PartKind<Panel>;
