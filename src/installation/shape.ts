import { z } from 'zod';
import type { Diagnostic, DiagnosticCode } from './diagnostic.ts';
import type { DocumentPath, WrittenDocument } from './document.ts';
import { nearest } from './nearest.ts';

type Issue = z.core.$ZodIssue;

const MOST_DIAGNOSTICS = 100;

// Trade units that people write for a quantity whose key has another unit: by what to multiply.
const CONVERSIONS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  m: { ft: 0.3048, in: 0.0254, cm: 0.01, mm: 0.001, km: 1000 },
  mm: { m: 1000, in: 25.4, cm: 10 },
  ohm: { mohm: 0.001, kohm: 1000, Mohm: 1e6 },
  W: { kW: 1000, hp: 745.7 },
  VA: { kVA: 1000, MVA: 1e6 },
  A: { mA: 0.001, kA: 1000 },
  V: { mV: 0.001, kV: 1000 },
};

/** What a file's shape lacks against its schema, as diagnostics with a place and what to write instead. */
export function shapeDiagnostics(schema: z.ZodType, document: WrittenDocument): readonly Diagnostic[] {
  const result = schema.safeParse(document.value);
  if (result.success) return [];
  return result.error.issues.slice(0, MOST_DIAGNOSTICS).flatMap((issue) => diagnose(issue, [], schema, document));
}

function diagnose(
  issue: Issue,
  prefix: DocumentPath,
  schema: z.ZodType,
  document: WrittenDocument,
): readonly Diagnostic[] {
  const path = [...prefix, ...issue.path];
  const key = String(path.at(-1) ?? 'the file');
  const value = at(document.value, path);
  const say = (code: DiagnosticCode, message: string, instead?: string, of: 'key' | 'value' = 'value') => [
    document.diagnostic(code, path, message, { of, instead }),
  ];
  if (typeof value === 'number' && !Number.isFinite(value))
    return say('not-finite', `${key} is not a number that can be measured`, `${key}: a number such as 12`);
  if (value === undefined && issue.code !== 'custom' && issue.code !== 'unrecognized_keys')
    return say('missing-key', `${owner(path)} has no ${key}`, example(key, issue), 'key');

  switch (issue.code) {
    case 'unrecognized_keys': {
      const known = keysAt(schema, document.value, path);
      return issue.keys.map((unknown) => unknownKey(unknown, known, path, at(value, [unknown]), document));
    }
    case 'invalid_type':
      return say(
        'wrong-type',
        `${key} needs ${article(issue.expected)}, not ${shown(value)}`,
        repaired(key, value, issue.expected),
      );
    case 'too_small':
    case 'too_big':
      return say('out-of-range', `${key} ${limit(issue)}`, `${key}: ${within(value, issue)}`);
    case 'invalid_value': {
      const choices = issue.values.map(String);
      const meant = typeof value === 'string' ? nearest(value, choices) : undefined;
      return say(
        'unknown-choice',
        `${key} is one of ${choices.join(', ')}, not ${shown(value)}`,
        `${key}: ${meant ?? choices[0] ?? ''}`,
      );
    }
    case 'invalid_key':
      return say(
        'bad-name',
        `"${key.slice(0, 60)}" cannot be a name: letters (at least one), digits, blanks and hyphens, no dot`,
        plainName(key),
        'key',
      );
    case 'invalid_union': {
      if ('discriminator' in issue && typeof issue.discriminator === 'string')
        return unknownKind(issue.discriminator, path, document, schema);
      const fitting = issue.errors.find(
        (errors) => !errors.some((error) => error.path.length === 0 && error.code === 'invalid_type'),
      );
      if (fitting !== undefined) return fitting.flatMap((inner) => diagnose(inner, path, schema, document));
      return say('wrong-type', `${owner(path)}: ${shown(value)} does not belong here`, 'the form in the examples');
    }
    case 'custom': {
      const { code, instead } = issue.params ?? {};
      return say(
        typeof code === 'string' ? (code as DiagnosticCode) : 'wrong-type',
        `${key} ${issue.message}`,
        typeof instead === 'string' ? instead : undefined,
      );
    }
    default:
      return say('wrong-type', `${key}: ${issue.message}`);
  }
}

function unknownKey(
  unknown: string,
  known: readonly string[],
  path: DocumentPath,
  value: unknown,
  document: WrittenDocument,
): Diagnostic {
  const full = [...path, unknown];
  const say = (code: DiagnosticCode, message: string, instead?: string) =>
    document.diagnostic(code, full, message, { of: 'key', instead });
  const number = typeof value === 'number' && Number.isFinite(value) ? value : undefined;
  const inUnit = known.find((key) => key.startsWith(`${unknown}_`));
  if (inUnit !== undefined)
    return say('unit-missing', `"${unknown}" needs its unit in the key`, `${inUnit}: ${number ?? 'a number'}`);
  const [stem, unit] = split(unknown);
  const sibling = stem === undefined ? undefined : known.find((key) => split(key)[0] === stem);
  if (sibling !== undefined && unit !== undefined) {
    const factor = CONVERSIONS[split(sibling)[1] ?? '']?.[unit];
    const converted =
      number === undefined || factor === undefined ? 'a number' : Number((number * factor).toPrecision(6));
    return say('wrong-unit', `"${stem}" is not written in ${unit} here`, `${sibling}: ${converted}`);
  }
  const meant = nearest(unknown, known);
  return say(
    'unknown-key',
    `${owner(full)} knows no "${unknown.slice(0, 60)}"; it knows ${known.join(', ')}`,
    meant === undefined ? 'nothing: leave it out' : `${meant}: ${shown(value)}`,
  );
}

function unknownKind(
  discriminator: string,
  path: DocumentPath,
  document: WrittenDocument,
  schema: z.ZodType,
): readonly Diagnostic[] {
  const kinds = kindsAt(schema, document.value, path.slice(0, -1));
  const value = at(document.value, path);
  const meant = typeof value === 'string' ? nearest(value, kinds) : undefined;
  return [
    document.diagnostic(
      'unknown-kind',
      path,
      `${owner(path)} cannot be of the ${discriminator} ${shown(value)}; there are ${kinds.join(', ')}`,
      { instead: `${discriminator}: ${meant ?? kinds[0] ?? ''}` },
    ),
  ];
}

/** The schema that a value at this path is held against, through defaults, transforms and unions. */
function schemaAt(schema: z.core.$ZodType, value: unknown, path: DocumentPath): z.core.$ZodType | undefined {
  const opened = open(schema, value);
  const [step, ...rest] = path;
  if (step === undefined || opened === undefined) return opened;
  const inner = at(value, [step]);
  if (opened instanceof z.ZodObject) {
    const shape: Readonly<Record<PropertyKey, z.core.$ZodType>> = opened.shape;
    const field = Object.hasOwn(shape, step) ? shape[step] : undefined;
    return field === undefined ? undefined : schemaAt(field, inner, rest);
  }
  if (opened instanceof z.ZodRecord) return schemaAt(opened.valueType, inner, rest);
  if (opened instanceof z.ZodArray) return schemaAt(opened.element, inner, rest);
  return undefined;
}

function open(schema: z.core.$ZodType, value: unknown): z.core.$ZodType | undefined {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodDefault) return open(schema.def.innerType, value);
  if (schema instanceof z.ZodPipe) return open(schema.def.in, value);
  if (schema instanceof z.ZodDiscriminatedUnion) {
    const kind = at(value, [schema.def.discriminator]);
    const option = schema.options.find((candidate) => kindOf(candidate, schema.def.discriminator) === kind);
    return option === undefined ? schema : open(option, value);
  }
  if (schema instanceof z.ZodUnion) {
    const option = schema.options.find((candidate) => open(candidate, value) instanceof z.ZodObject);
    return isObject(value) && option !== undefined ? open(option, value) : schema;
  }
  return schema;
}

function kindOf(option: z.core.$ZodType, discriminator: string): unknown {
  const opened = open(option, undefined);
  const literal =
    opened instanceof z.ZodObject ? (opened.shape as Record<string, z.core.$ZodType>)[discriminator] : undefined;
  return literal instanceof z.ZodLiteral ? [...literal.values][0] : undefined;
}

function keysAt(schema: z.ZodType, value: unknown, path: DocumentPath): readonly string[] {
  const found = schemaAt(schema, value, path);
  return found instanceof z.ZodObject ? Object.keys(found.shape) : [];
}

function kindsAt(schema: z.ZodType, value: unknown, path: DocumentPath): readonly string[] {
  const found = schemaAt(schema, value, path);
  if (!(found instanceof z.ZodDiscriminatedUnion)) return [];
  return found.options.map((option) => String(kindOf(option, found.def.discriminator)));
}

function at(value: unknown, path: DocumentPath): unknown {
  return path.reduce<unknown>(
    (inner, step) => (isObject(inner) && Object.hasOwn(inner, step) ? inner[step] : undefined),
    value,
  );
}

function isObject(value: unknown): value is Readonly<Record<PropertyKey, unknown>> {
  return typeof value === 'object' && value !== null;
}

function split(key: string): readonly [string | undefined, string | undefined] {
  const last = key.lastIndexOf('_');
  return last < 1 ? [undefined, undefined] : [key.slice(0, last), key.slice(last + 1)];
}

function owner(path: DocumentPath): string {
  return path.length < 2 ? 'the file' : path.slice(0, -1).map(String).join('.');
}

function shown(value: unknown): string {
  if (typeof value === 'string') return `"${value.slice(0, 60)}"`;
  if (Array.isArray(value)) return 'a list';
  return isObject(value) ? 'a map' : String(value);
}

function article(expected: string): string {
  const names: Readonly<Record<string, string>> = {
    object: 'a map',
    record: 'a map',
    array: 'a list',
    tuple: 'a list',
    string: 'a text',
  };
  return names[expected] ?? `a ${expected}`;
}

function example(key: string, issue: Issue): string {
  const expected =
    issue.code === 'invalid_type'
      ? article(issue.expected)
      : issue.code === 'invalid_value'
        ? issue.values.map(String).join(' or ')
        : 'a value';
  return `${key}: ${expected}`;
}

function repaired(key: string, value: unknown, expected: string): string {
  const number = typeof value === 'string' ? Number.parseFloat(value) : Number.NaN;
  if (expected === 'number') return `${key}: ${Number.isFinite(number) ? number : 'a number'}`;
  if (expected === 'string' && (typeof value === 'number' || typeof value === 'boolean')) return `${key}: "${value}"`;
  return `${key}: ${article(expected)}`;
}

function limit(issue: Extract<Issue, { code: 'too_small' | 'too_big' }>): string {
  const counted = issue.origin === 'array' || issue.origin === 'string' ? 'must have' : 'must be';
  if (issue.code === 'too_small') return `${counted} ${issue.inclusive ? 'at least' : 'above'} ${issue.minimum}`;
  return `${counted} ${issue.inclusive ? 'at most' : 'below'} ${issue.maximum}`;
}

function within(value: unknown, issue: Extract<Issue, { code: 'too_small' | 'too_big' }>): string {
  if (typeof value !== 'number') return limit(issue).replace('must have ', '');
  if (issue.code === 'too_big') return String(issue.maximum);
  return -value > Number(issue.minimum) ? String(-value) : issue.inclusive ? String(issue.minimum) : '1';
}

function plainName(name: string): string {
  const plain = name
    .replace(/[^\p{L}\p{N} '’/-]+/gu, ' ')
    .trim()
    .slice(0, 60)
    .trim();
  return /\p{L}/u.test(plain) ? plain : 'a name in plain words';
}
