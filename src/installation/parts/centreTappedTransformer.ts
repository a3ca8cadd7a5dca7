import { z } from 'zod';
import { reactance_ohm, resistance_ohm } from '../quantity.ts';
import { leakage, type PartKind } from '../plan.ts';

const percent = z.number().gt(0).max(50);

const schema = z
  .strictObject({
    kind: z.literal('centre-tapped-transformer'),
    rating_VA: z
      .number()
      .gt(0)
      .max(1e9)
      .meta({ examples: [25000] }),
    secondary_V: z.number().gt(0).max(1e5).default(240).describe('x1 to x3, no load'),
    angle_deg: z.number().min(-360).max(360).default(0),
    resistance_percent: percent.optional().describe('of the full winding on the rating'),
    reactance_percent: percent.optional(),
    impedance_percent: percent.optional().describe('or |Z| …'),
    x_over_r: z.number().min(0).max(100).optional().describe('… and X/R'),
    resistance_ohm: resistance_ohm.optional().describe('or measured, x1 to x3'),
    reactance_ohm: reactance_ohm.optional(),
    primary_VA: z
      .number()
      .gt(0)
      .max(1e12)
      .optional()
      .describe('three-phase short-circuit power of the primary; absent: infinite'),
  })
  .superRefine((part, context) => {
    const ways = [
      ['resistance_percent', 'reactance_percent'],
      ['impedance_percent', 'x_over_r'],
      ['resistance_ohm', 'reactance_ohm'],
    ] as const;
    const started = ways.filter(([a, b]) => part[a] !== undefined || part[b] !== undefined);
    const whole = started[0];
    if (started.length === 1 && whole !== undefined && part[whole[0]] !== undefined && part[whole[1]] !== undefined)
      return;
    context.addIssue({
      code: 'custom',
      path: [],
      message:
        'needs its impedance in one way: resistance_percent and reactance_percent, or impedance_percent and x_over_r, or resistance_ohm and reactance_ohm',
      params: { code: 'missing-key', instead: 'resistance_percent: 1.3, reactance_percent: 1.4' },
    });
  });

type CentreTappedTransformer = z.output<typeof schema>;

/** Impedance of the whole secondary, x1 to x3, primary shorted, Ω. */
function whole_ohm(part: CentreTappedTransformer): { readonly r: number; readonly x: number } {
  const base_ohm = part.secondary_V ** 2 / part.rating_VA;
  if (part.impedance_percent !== undefined && part.x_over_r !== undefined) {
    const r = (part.impedance_percent / 100 / Math.hypot(1, part.x_over_r)) * base_ohm;
    return { r, x: r * part.x_over_r };
  }
  if (part.resistance_percent !== undefined && part.reactance_percent !== undefined)
    return { r: (part.resistance_percent / 100) * base_ohm, x: (part.reactance_percent / 100) * base_ohm };
  return { r: part.resistance_ohm ?? 0, x: part.reactance_ohm ?? 0 };
}

/** A single-phase transformer whose secondary x1–x3 has its middle brought out at x2; `<part>.upper` runs x2 → x1 and
 *  `<part>.lower` x3 → x2. T model of the interlaced winding: Z0 = 0.5R + j0.8X in the primary, Z1 = Z2 = R + j0.4X in each
 *  half, per unit of the rating, each at its own voltage.
 *  @see W. H. Kersting, "Center-Tapped Transformer and 120-/240-V Secondary Models", IEEE Trans. Ind. Appl. 45(2), 2009; coefficients from memory */
export const centreTappedTransformer = {
  kind: 'centre-tapped-transformer',
  schema,
  source: true,
  ends: 'x1, x2 (the middle), x3',
  terminals: () => ['x1', 'x2', 'x3'],
  plan(name, part) {
    const whole = whole_ohm(part);
    // Per unit on half the voltage is a quarter of the ohms of the whole winding.
    const [r, x] = [whole.r / 4, whole.x / 4];
    // Half of a three-phase short-circuit power is what one phase-to-phase primary winding sees.
    const primary = part.primary_VA === undefined ? 0 : (part.secondary_V / 2) ** 2 / (part.primary_VA / 2);
    const mutual = { r: 0.5 * r, x: 0.8 * x + primary };
    const half = { r: mutual.r + r, x: mutual.x + 0.4 * x };
    const branch = {
      role: 'winding',
      medium: 'metal',
      resistance_ohm: half.r,
      reactance_ohm: half.x,
      emf_V: part.secondary_V / 2,
      angle_rad: (part.angle_deg * Math.PI) / 180,
    } as const;
    return {
      branches: [
        { ...branch, name: `${name}.upper`, from: `${name}.x2`, to: `${name}.x1` },
        { ...branch, name: `${name}.lower`, from: `${name}.x3`, to: `${name}.x2` },
        leakage(`${name}.insulation`, `${name}.x2`),
      ],
      winding: {
        branches: [`${name}.upper`, `${name}.lower`],
        resistance_ohm: [half.r, mutual.r, mutual.r, half.r],
        reactance_ohm: [half.x, mutual.x, mutual.x, half.x],
      },
    };
  },
} satisfies PartKind<CentreTappedTransformer>;
