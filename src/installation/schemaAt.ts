import { z } from 'zod';
import type { DocumentPath } from './documentPlaces.ts';

type Schema = z.core.$ZodType;

/** The value at a path in plain maps and lists; undefined where there is none. */
export function valueAt(value: unknown, path: DocumentPath): unknown {
  return path.reduce<unknown>(
    (inner, step) => (isObject(inner) && Object.hasOwn(inner, step) ? inner[step] : undefined),
    value,
  );
}

/** The keys a map at this path may have; none where it is no map. */
export function keysAt(schema: z.ZodType, value: unknown, path: DocumentPath): readonly string[] {
  const found = schemaAt(schema, value, path);
  const opened = found === undefined ? undefined : open(found, valueAt(value, path));
  return opened instanceof z.ZodObject ? Object.keys(opened.shape) : [];
}

/** The kinds that the thing at this path can be of. */
export function kindsAt(schema: z.ZodType, value: unknown, path: DocumentPath): readonly string[] {
  const found = schemaAt(schema, value, path);
  const opened = found === undefined ? undefined : open(found, {});
  if (!(opened instanceof z.ZodDiscriminatedUnion)) return [];
  return opened.options.map((option) => String(literalOf(option, opened.def.discriminator)));
}

/** An example of what belongs at this path, as it is written, if the schema gives one. */
export function exampleAt(schema: z.ZodType, value: unknown, path: DocumentPath): string | undefined {
  for (let found = schemaAt(schema, value, path); found !== undefined; found = inside(found)) {
    const examples: unknown = z.globalRegistry.get(found)?.examples;
    const example: unknown = Array.isArray(examples) ? examples[0] : undefined;
    if (example !== undefined) return written(example);
  }
  return undefined;
}

/** A plain value as it is written on one line. */
export function written(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(written).join(', ')}]`;
  if (!isObject(value)) return String(value);
  const pairs = Object.entries(value).map(([key, inner]) => `${key}: ${written(inner)}`);
  return `{ ${pairs.join(', ')} }`;
}

/** Whether a value is a map or a list. */
export function isObject(value: unknown): value is Readonly<Record<PropertyKey, unknown>> {
  return typeof value === 'object' && value !== null;
}

function schemaAt(schema: Schema, value: unknown, path: DocumentPath): Schema | undefined {
  const [step, ...rest] = path;
  if (step === undefined) return schema;
  const opened = open(schema, value);
  const inner = valueAt(value, [step]);
  if (opened instanceof z.ZodObject) {
    const shape: Readonly<Record<PropertyKey, Schema>> = opened.shape;
    const field = Object.hasOwn(shape, step) ? shape[step] : undefined;
    return field === undefined ? undefined : schemaAt(field, inner, rest);
  }
  if (opened instanceof z.ZodRecord) return schemaAt(opened.valueType, inner, rest);
  if (opened instanceof z.ZodArray) return schemaAt(opened.element, inner, rest);
  if (opened instanceof z.ZodTuple) {
    const item: Schema | undefined = opened.def.items[Number(step)];
    return item === undefined ? undefined : schemaAt(item, inner, rest);
  }
  return undefined;
}

function open(schema: Schema, value: unknown): Schema {
  if (schema instanceof z.ZodDiscriminatedUnion) {
    const { discriminator } = schema.def;
    const kind = valueAt(value, [discriminator]);
    const option = schema.options.find(
      (candidate) => kind !== undefined && literalOf(candidate, discriminator) === kind,
    );
    return option === undefined ? schema : open(option, value);
  }
  if (schema instanceof z.ZodUnion) {
    const wanted = Array.isArray(value) ? z.ZodTuple : z.ZodObject;
    const option = schema.options.find((candidate) => isObject(value) && open(candidate, value) instanceof wanted);
    return option === undefined ? schema : open(option, value);
  }
  const within = inside(schema);
  return within === undefined ? schema : open(within, value);
}

function inside(schema: Schema): Schema | undefined {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodDefault) return schema.def.innerType;
  return schema instanceof z.ZodPipe ? schema.def.in : undefined;
}

function literalOf(option: Schema, discriminator: string): unknown {
  const opened = open(option, undefined);
  const literal =
    opened instanceof z.ZodObject ? (opened.shape as Readonly<Record<string, Schema>>)[discriminator] : undefined;
  return literal instanceof z.ZodLiteral ? [...literal.values][0] : undefined;
}
