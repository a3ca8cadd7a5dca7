import { z } from 'zod';
import { checkNameplate, nameplate_ohm, nameplateKeys } from '../nameplate.ts';
import { leakage, type PartKind } from '../plan.ts';
import { coupled, inSeries, interlaced } from '../windings.ts';

const schema = z
  .strictObject({
    kind: z.literal('centre-tapped-transformer'),
    rating_VA: z
      .number()
      .min(1)
      .max(1e9)
      .meta({ examples: [25000] }),
    secondary_V: z.number().min(1).max(1e5).default(240).describe('x1 to x3, no load'),
    angle_deg: z.number().min(-360).max(360).default(0),
    ...nameplateKeys,
    primary_VA: z
      .number()
      .min(1)
      .max(1e12)
      .optional()
      .describe('three-phase short-circuit power of the primary; absent: infinite'),
  })
  .superRefine(checkNameplate);

type CentreTappedTransformer = z.output<typeof schema>;

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
    const whole = nameplate_ohm(part, part.secondary_V ** 2 / part.rating_VA);
    const { common, half: own } = interlaced(whole);
    // Half of a three-phase short-circuit power is what one phase-to-phase primary winding sees.
    const primary = part.primary_VA === undefined ? 0 : (part.secondary_V / 2) ** 2 / (part.primary_VA / 2);
    const mutual = { r: common.r, x: common.x + primary };
    const half = inSeries(mutual, own);
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
      winding: coupled(
        [`${name}.upper`, `${name}.lower`],
        [
          [half, mutual],
          [mutual, half],
        ],
      ),
      supply: {
        phases: 2,
        neutral: `${name}.x2`,
        lines: [
          { terminal: `${name}.x1`, emf_V: branch.emf_V, angle_rad: branch.angle_rad },
          { terminal: `${name}.x3`, emf_V: branch.emf_V, angle_rad: branch.angle_rad + Math.PI },
        ],
      },
    };
  },
} satisfies PartKind<CentreTappedTransformer>;
