import { z } from 'zod';
import type { PartKind } from '../plan.ts';

const ohms = z.number().gt(0).max(1e8);

const schema = z.strictObject({
  kind: z.literal('insulation-monitor'),
  threshold_ohm: ohms.default(50_000).describe('it warns below this insulation of the whole system to earth'),
  own_ohm: ohms.default(120_000).describe('its own resistance between the system and earth'),
});

type InsulationMonitor = z.output<typeof schema>;

/** Watches the insulation of an IT system to earth and warns; it opens nothing. One branch `<part>`, its own resistance,
 *  from `.system` to `.earth`. It reads the conductance at mains frequency, so capacitance to earth does not disturb it.
 *  Default threshold and resistance: IEC 61557-8 practice, from memory. */
export const insulationMonitor = {
  kind: 'insulation-monitor',
  schema,
  ends: 'system, earth',
  terminals: () => ['system', 'earth'],
  mustJoin: () => ['system', 'earth'],
  plan(name, part) {
    return {
      branches: [
        {
          name,
          from: `${name}.system`,
          to: `${name}.earth`,
          role: 'insulation',
          medium: 'insulation',
          resistance_ohm: part.own_ohm,
          reactance_ohm: 0,
        },
      ],
      device: {
        kind: 'insulation-monitor',
        poles: [],
        monitors: name,
        settings: { family: 'insulation-monitor', threshold_ohm: part.threshold_ohm },
      },
    };
  },
} satisfies PartKind<InsulationMonitor>;
