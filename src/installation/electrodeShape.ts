import { z } from 'zod';
import {
  gridWires,
  plateResistance_ohm,
  plateWires,
  ringResistance_ohm,
  ringWires,
  rodResistance_ohm,
  rodsResistance_ohm,
  rodsWires,
  rodWires,
  stripResistance_ohm,
  stripWires,
  wireResistance_ohm,
  type Wires,
} from '../earth/index.ts';
import { length_m } from './quantity.ts';

const thickness_m = z.number().gt(0).max(1);
const depth_m = z.number().min(0.01).max(10);
const wires = z.number().int().min(2).max(14);

/** A rod driven from the surface. */
export const rodShape = z.object({
  kind: z.literal('rod'),
  length_m,
  diameter_m: thickness_m,
});

/** Several equal rods that metal joins. */
export const rodsShape = z.object({
  kind: z.literal('rods'),
  count: z.number().int().min(2).max(24),
  spacing_m: length_m.describe('from one rod to the next'),
  arrangement: z.enum(['line', 'circle', 'square']).default('line'),
  length_m,
  diameter_m: thickness_m,
});

/** A straight buried strip or round wire. */
export const stripShape = z.object({
  kind: z.literal('strip'),
  length_m,
  depth_m,
  width_m: thickness_m.optional().describe('of a flat strip'),
  thickness_m: thickness_m.default(0.003).describe('of a flat strip'),
  diameter_m: thickness_m.optional().describe('of a round wire, instead of width_m'),
});

/** A buried ring of wire. */
export const ringShape = z.object({
  kind: z.literal('ring'),
  diameter_m: length_m,
  wire_diameter_m: thickness_m,
  depth_m,
});

/** A buried square plate. */
export const plateShape = z.object({
  kind: z.literal('plate'),
  side_m: z.number().gt(0).max(10),
  depth_m: depth_m.describe('to its middle'),
  lie: z.enum(['upright', 'flat']).default('upright'),
});

/** A buried rectangular grid of wires. */
export const gridShape = z.object({
  kind: z.literal('grid'),
  length_m,
  width_m: length_m,
  wires_lengthwise: wires.describe('wires of the full length, both edges counted'),
  wires_crosswise: wires.describe('wires of the full width, both edges counted'),
  wire_diameter_m: thickness_m,
  depth_m,
});

const SHAPES = [rodShape, rodsShape, stripShape, ringShape, plateShape, gridShape] as const;

/** Metal in the soil by its form; further keys are left aside. */
export const electrodeShape = z.discriminatedUnion('kind', SHAPES);

/** Metal in the soil by its form. */
export type ElectrodeShape = z.output<typeof electrodeShape>;

/** Resistance by the published formula in even soil, Ω. Those for grids lie 5 to 15 % high, the fewer meshes the more: a grid is
 *  solved by segments instead. */
export function byFormula_ohm(shape: Exclude<ElectrodeShape, { kind: 'grid' }>, soil_ohm_m: number): number {
  switch (shape.kind) {
    case 'rod':
      return rodResistance_ohm(shape.length_m, shape.diameter_m / 2, soil_ohm_m);
    case 'rods': {
      const { count, spacing_m, arrangement, length_m, diameter_m } = shape;
      return rodsResistance_ohm(count, spacing_m, arrangement, length_m, diameter_m / 2, soil_ohm_m);
    }
    case 'strip':
      return shape.width_m === undefined
        ? wireResistance_ohm(shape.length_m, (shape.diameter_m ?? 0) / 2, shape.depth_m, soil_ohm_m)
        : stripResistance_ohm(shape.length_m, shape.width_m, shape.thickness_m, shape.depth_m, soil_ohm_m);
    case 'ring':
      return ringResistance_ohm(shape.diameter_m, shape.wire_diameter_m, shape.depth_m, soil_ohm_m);
    case 'plate':
      return plateResistance_ohm(shape.side_m, shape.depth_m, shape.lie, soil_ohm_m);
  }
}

/** The same as wires, its middle at 0, 0, for the numeric method. */
export function wiresOf(shape: ElectrodeShape): Wires {
  switch (shape.kind) {
    case 'rod':
      return rodWires(shape.length_m, shape.diameter_m / 2);
    case 'rods': {
      const { count, spacing_m, arrangement, length_m, diameter_m } = shape;
      return rodsWires(count, spacing_m, arrangement, length_m, diameter_m / 2);
    }
    case 'strip':
      return stripWires(shape.length_m, stripRadius_m(shape), shape.depth_m);
    case 'ring':
      return ringWires(shape.diameter_m, shape.wire_diameter_m / 2, shape.depth_m);
    case 'plate':
      return plateWires(shape.side_m, shape.depth_m, shape.lie);
    case 'grid':
      return gridWires(gridOf(shape));
  }
}

/** What is wrong with a form as a whole: the key, what is the matter, and what would do; undefined if nothing is. */
export function misfit(shape: ElectrodeShape): readonly [key: string, message: string, instead: string] | undefined {
  switch (shape.kind) {
    case 'rod':
    case 'rods':
      if (shape.length_m < 4 * shape.diameter_m)
        return ['length_m', 'is too short for its diameter: the formula is for a slender rod', 'length_m: 2.44'];
      if (shape.kind === 'rod') return undefined;
      if (shape.spacing_m < 4 * shape.diameter_m)
        return ['spacing_m', 'is too small: the rods stand in one another', `spacing_m: ${shape.length_m}`];
      return shape.arrangement === 'square' && shape.count % 4 !== 0
        ? ['count', 'does not go evenly round a square', `count: ${4 * Math.ceil(shape.count / 4)}`]
        : undefined;
    case 'strip': {
      if ((shape.width_m === undefined) === (shape.diameter_m === undefined))
        return ['width_m', 'needs one of width_m and diameter_m', 'width_m: 0.03'];
      const thick = shape.width_m ?? shape.diameter_m ?? 0;
      if (shape.width_m !== undefined && shape.thickness_m > shape.width_m / 8)
        return ['thickness_m', 'is too thick for its width: the formula is for a flat strip', 'thickness_m: 0.003'];
      if (shape.length_m < 8 * thick) return ['length_m', 'is too short for a strip', `length_m: ${20 * thick}`];
      return shape.depth_m < thick ? ['depth_m', 'is no depth for a strip so thick', 'depth_m: 0.6'] : undefined;
    }
    case 'ring':
      if (shape.wire_diameter_m > shape.diameter_m / 20)
        return ['wire_diameter_m', 'is too thick for the ring', 'wire_diameter_m: 0.008'];
      if (shape.depth_m < shape.wire_diameter_m) return ['depth_m', 'is no depth for so thick a wire', 'depth_m: 0.6'];
      return shape.depth_m > shape.diameter_m / 2
        ? ['depth_m', 'is too deep: the formula is for a ring wider than deep', `depth_m: ${shape.diameter_m / 4}`]
        : undefined;
    case 'plate':
      return shape.depth_m < shape.side_m / 2
        ? ['depth_m', 'to the middle of the plate is less than half its side', `depth_m: ${2 * shape.side_m}`]
        : undefined;
    case 'grid': {
      const { length_m, width_m, wires_lengthwise, wires_crosswise } = shape;
      const mesh = Math.min(length_m / (wires_crosswise - 1), width_m / (wires_lengthwise - 1));
      if (shape.wire_diameter_m > mesh / 20)
        return ['wire_diameter_m', 'is too thick for its meshes', `wire_diameter_m: ${mesh / 200}`];
      return shape.depth_m < shape.wire_diameter_m
        ? ['depth_m', 'is no depth for so thick a wire', 'depth_m: 0.6']
        : undefined;
    }
  }
}

/** Radius of the round wire that leaks like a strip: a quarter of its width. */
function stripRadius_m({ width_m, diameter_m = 0 }: z.output<typeof stripShape>): number {
  return width_m === undefined ? diameter_m / 2 : width_m / 4;
}

function gridOf({ wires_lengthwise, wires_crosswise, wire_diameter_m, ...grid }: z.output<typeof gridShape>) {
  return { ...grid, lengthwise: wires_lengthwise, crosswise: wires_crosswise, wire_radius_m: wire_diameter_m / 2 };
}
