import type { z } from 'zod';
import { buriedResistance_ohm } from '../earth/index.ts';
import { byFormula_ohm, electrodeShape, misfit, wiresOf, type ElectrodeShape } from './electrodeShape.ts';
import type { Plan } from './plan.ts';
import { resistance_ohm } from './quantity.ts';
import { groundOf, soilKeys, soilMissing, type WrittenSoil } from './soilLayers.ts';

/** Keys of an electrode beside its form: the soil, or a measured resistance instead of both. */
export const electrodeKeys = {
  ...soilKeys,
  resistance_ohm: resistance_ohm.optional().describe('or measured, to remote earth'),
} as const;

interface Written extends WrittenSoil {
  readonly kind: ElectrodeShape['kind'];
  readonly resistance_ohm?: number | undefined;
}

/** Checks an electrode as a whole: measured, or with all of its form and soil, and of a form that can be.
 *  @param shape its form, whose keys without a default are needed */
export function checkElectrode(shape: z.ZodObject) {
  return (part: Written, context: z.RefinementCtx): void => {
    if (part.resistance_ohm !== undefined) return;
    const written = Object.entries(part).flatMap(([key, value]) => (value === undefined ? [] : [key]));
    const soil = soilMissing(part);
    const missing = Object.entries(shape.shape).flatMap(([key, schema]) =>
      written.includes(key) || isOptional(schema) ? [] : [key],
    );
    if (soil?.[0].length === 1) missing.push(...soil[0]);
    const say = (path: readonly string[], message: string, code: string, instead: string) =>
      context.addIssue({ code: 'custom', path: [...path], message, params: { code, instead } });
    if (missing.length > 0)
      return say([], `needs ${missing.join(', ')}, or a measured resistance_ohm`, 'missing-key', 'resistance_ohm: 25');
    if (soil !== undefined) return say(['below'], 'needs soil_ohm_m or soil', 'missing-key', soil[1]);
    const form = electrodeShape.safeParse(part);
    const wrong = form.success ? misfit(form.data) : undefined;
    if (wrong !== undefined) say([wrong[0]], wrong[1], 'out-of-range', wrong[2]);
  };
}

/** The plan of an electrode with one terminal `top`: one branch to remote earth. In even soil by the published formula; over a
 *  lower layer the formula's answer times what the numeric method says that the layer changes; a grid by the numeric method. */
export function planElectrode(name: string, part: Written): Plan {
  const branch = { name, from: `${name}.top`, to: 'earth', role: 'electrode', medium: 'soil' } as const;
  return { branches: [{ ...branch, resistance_ohm: toEarth_ohm(part), reactance_ohm: 0 }] };
}

function toEarth_ohm(part: Written): number {
  if (part.resistance_ohm !== undefined) return part.resistance_ohm * (part.seasonal_factor ?? 1);
  const ground = groundOf(part);
  if (ground === undefined) throw new RangeError(`${part.kind}: neither its soil nor its resistance is given`);
  // The schema has seen to it that the form is whole; where places come read already there is none to ask.
  const shape = part as unknown as ElectrodeShape;
  if (shape.kind === 'grid') return buriedResistance_ohm(wiresOf(shape), ground);
  if (ground.kind === 'even') return byFormula_ohm(shape, ground.soil_ohm_m);
  const wires = wiresOf(shape);
  const even = { kind: 'even', soil_ohm_m: ground.upper_ohm_m } as const;
  const change = buriedResistance_ohm(wires, ground) / buriedResistance_ohm(wires, even);
  return byFormula_ohm(shape, ground.upper_ohm_m) * change;
}

function isOptional(schema: unknown): boolean {
  const { safeParse } = schema as z.ZodType;
  return safeParse(undefined).success;
}
