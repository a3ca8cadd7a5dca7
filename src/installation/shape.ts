import type { z } from 'zod';
import type { Diagnostic, DiagnosticCode } from './diagnostic.ts';
import type { WrittenDocument } from './document.ts';
import type { DocumentPath } from './documentPlaces.ts';
import { nearest } from './nearest.ts';
import { exampleAt, isObject, keysAt, kindsAt, valueAt } from './schemaAt.ts';
import { unknownKey } from './unknownKey.ts';

type Issue = z.core.$ZodIssue;

/** What a file's shape lacks against its schema, as diagnostics with a place and what to write instead. */
export function shapeDiagnostics(schema: z.ZodType, document: WrittenDocument): readonly Diagnostic[] {
  const result = schema.safeParse(document.value);
  if (result.success) return [];
  // A key that was written without its unit is not missing as well.
  const meant = new Set<string>();
  const found = result.error.issues.flatMap((issue) => diagnose(issue, { schema, document, prefix: [], meant }));
  // What a broken text seems to lack may stand behind the break.
  const lacks = document.sound === 'whole';
  return found.filter(({ code, path }) => code !== 'missing-key' || (lacks && !meant.has(path)));
}

interface Setting {
  readonly schema: z.ZodType;
  readonly document: WrittenDocument;
  readonly prefix: DocumentPath;
  /** Paths, written to, of what an unknown key probably stood for, and of the maps they are in. */
  readonly meant: Set<string>;
}

function diagnose(issue: Issue, setting: Setting): readonly Diagnostic[] {
  const { schema, document } = setting;
  const path = [...setting.prefix, ...issue.path];
  const value = valueAt(document.value, path);
  const example = exampleAt(schema, document.value, path);
  const say = (code: DiagnosticCode, message: string, instead?: string, of: 'key' | 'value' = 'value') => [
    document.diagnostic(code, path, message, { of, instead }),
  ];
  const writes = (what: string): string => (typeof path.at(-1) === 'string' ? `${String(path.at(-1))}: ${what}` : what);
  const thing = nameOf(path);

  if (typeof value === 'number' && !Number.isFinite(value))
    return say('not-finite', `${thing} is not a number that can be measured`, writes(example ?? 'a number such as 12'));
  if (value === undefined && issue.code !== 'custom' && path.length > 0) {
    const kinds = issue.code === 'invalid_union' ? kindsAt(schema, document.value, path.slice(0, -1)) : [];
    const wanted = kinds.length > 0 ? kinds.join(' or ') : expectation(issue);
    return say('missing-key', `${nameOf(path.slice(0, -1))} has no ${thing}`, writes(example ?? wanted), 'key');
  }

  if (value === null && path.length === 0) return say('wrong-type', 'the file is empty', example ?? article('object'));

  switch (issue.code) {
    case 'unrecognized_keys': {
      const known = keysAt(schema, document.value, path);
      return issue.keys.map((key) => {
        const unknown = unknownKey(key, known, valueAt(value, [key]), nameOf(path));
        if (unknown.meant !== undefined)
          for (const place of [path, [...path, unknown.meant]]) setting.meant.add(place.map(String).join('.'));
        const { code, message, instead } = unknown;
        return document.diagnostic(code, [...path, key], message, { of: 'key', instead });
      });
    }
    case 'invalid_type':
      return say(
        'wrong-type',
        `${thing} needs ${article(issue.expected)}, not ${shown(value)}`,
        writes(repaired(value, issue.expected) ?? example ?? article(issue.expected)),
      );
    case 'too_small':
    case 'too_big':
      return say('out-of-range', `${thing} ${limit(issue)}`, writes(within(value, issue) ?? example ?? limit(issue)));
    case 'invalid_value': {
      const choices = issue.values.map(String);
      const near = typeof value === 'string' ? nearest(value, choices) : undefined;
      return say(
        'unknown-choice',
        `${thing} is one of ${choices.join(', ')}, not ${shown(value)}`,
        writes(near ?? choices[0] ?? ''),
      );
    }
    case 'invalid_key':
      return say(
        'bad-name',
        `"${thing.slice(0, 60)}" cannot be a name: letters (at least one), digits, blanks and hyphens, no dot`,
        plainName(thing),
        'key',
      );
    case 'invalid_union': {
      if ('discriminator' in issue && typeof issue.discriminator === 'string') return unknownKind(path, setting);
      const fitting = issue.errors.find(
        (errors) => !errors.some((error) => error.path.length === 0 && error.code === 'invalid_type'),
      );
      if (fitting !== undefined) return fitting.flatMap((inner) => diagnose(inner, { ...setting, prefix: path }));
      return say('wrong-type', `${thing} cannot be ${shown(value)}`, writes(example ?? 'as in the examples'));
    }
    case 'custom': {
      const { code, instead } = issue.params ?? {};
      return say(
        typeof code === 'string' ? (code as DiagnosticCode) : 'wrong-type',
        `${thing} ${issue.message}`,
        typeof instead === 'string' ? instead : undefined,
      );
    }
    default:
      return say('wrong-type', `${thing}: ${issue.message}`, example);
  }
}

function unknownKind(path: DocumentPath, { schema, document }: Setting): readonly Diagnostic[] {
  const kinds = kindsAt(schema, document.value, path.slice(0, -1));
  const value = valueAt(document.value, path);
  const meant = typeof value === 'string' ? nearest(value, kinds) : undefined;
  const message = `${nameOf(path.slice(0, -1))} cannot be of the kind ${shown(value)}; there are ${kinds.join(', ')}`;
  return [document.diagnostic('unknown-kind', path, message, { instead: `kind: ${meant ?? 'one of these'}` })];
}

function nameOf(path: DocumentPath): string {
  const last = path.at(-1);
  if (last === undefined) return 'the file';
  return typeof last === 'number' ? `entry ${last + 1} of ${nameOf(path.slice(0, -1))}` : String(last);
}

function shown(value: unknown): string {
  if (typeof value === 'string') return `"${value.slice(0, 60)}"`;
  if (Array.isArray(value)) return 'a list';
  return isObject(value) ? 'a map' : String(value);
}

const TYPES: Readonly<Record<string, string>> = {
  object: 'a map',
  record: 'a map',
  array: 'a list',
  tuple: 'a list',
  string: 'a text',
};

function article(expected: string): string {
  return TYPES[expected] ?? `a ${expected}`;
}

function expectation(issue: Issue): string {
  if (issue.code === 'invalid_type') return article(issue.expected);
  return issue.code === 'invalid_value' ? issue.values.map(String).join(' or ') : 'a value';
}

function repaired(value: unknown, expected: string): string | undefined {
  // In 1_000 or 1,5 what parses is not what was meant; in "10 ohm" it is.
  const whole = typeof value === 'string' && !/\d[\s,_'’]+\d/u.test(value);
  const number = whole ? Number.parseFloat(value) : Number.NaN;
  if (expected === 'number' && Number.isFinite(number)) return String(number);
  return expected === 'string' && (typeof value === 'number' || typeof value === 'boolean') ? `"${value}"` : undefined;
}

type Limit = Extract<Issue, { code: 'too_small' | 'too_big' }>;

function limit(issue: Limit): string {
  const counts: Readonly<Record<string, string>> = { array: ' entries', string: ' characters' };
  const counted = counts[issue.origin];
  const verb = counted === undefined ? 'must be' : 'needs';
  if (issue.code === 'too_small')
    return `${verb} ${issue.inclusive === true ? 'at least' : 'above'} ${issue.minimum}${counted ?? ''}`;
  return `${verb} ${issue.inclusive === true ? 'at most' : 'below'} ${issue.maximum}${counted ?? ''}`;
}

function within(value: unknown, issue: Limit): string | undefined {
  if (typeof value !== 'number') return undefined;
  if (issue.code === 'too_big') return String(issue.maximum);
  if (-value > Number(issue.minimum)) return String(-value);
  return issue.inclusive === true ? String(issue.minimum) : undefined;
}

function plainName(name: string): string {
  const plain = name
    .replace(/[^\p{L}\p{N} '’/-]+/gu, ' ')
    .trim()
    .slice(0, 60)
    .trim();
  return /\p{L}/u.test(plain) ? plain : 'a name in plain words';
}
