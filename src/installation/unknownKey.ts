import type { DiagnosticCode } from './diagnostic.ts';
import { nearest } from './nearest.ts';
import { isObject, written } from './schemaAt.ts';

// Trade units that people write for a quantity whose key has another unit: by what to multiply.
const CONVERSIONS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  m: { ft: 0.3048, in: 0.0254, cm: 0.01, mm: 0.001, km: 1000 },
  mm: { m: 1000, in: 25.4, cm: 10 },
  ohm: { mohm: 0.001, kohm: 1000, Mohm: 1e6 },
  W: { kW: 1000, hp: 745.7 },
  VA: { kVA: 1000, MVA: 1e6 },
  A: { mA: 0.001, uA: 1e-6, kA: 1000 },
  F: { mF: 1e-3, uF: 1e-6, µF: 1e-6, nF: 1e-9, pF: 1e-12 },
  nF: { pF: 0.001, uF: 1000, µF: 1000 },
  V: { mV: 0.001, kV: 1000 },
};

/** What is to be said about a key that is not known there: `meant` is the known key it stands for, if one can be told. */
export interface UnknownKey {
  readonly code: DiagnosticCode;
  readonly message: string;
  readonly instead: string;
  readonly meant?: string;
}

/** Tells a key without its unit, a key in another unit and a misspelt key apart. */
export function unknownKey(key: string, known: readonly string[], value: unknown, owner: string): UnknownKey {
  const number = typeof value === 'number' && Number.isFinite(value) ? value : undefined;
  const inUnit = known.find((candidate) => candidate.startsWith(`${key}_`));
  if (inUnit !== undefined)
    return {
      code: 'unit-missing',
      message: `"${key}" needs its unit in the key`,
      instead: `${inUnit}: ${number ?? 'a number'}`,
      meant: inUnit,
    };
  const [stem, unit] = split(key);
  const sibling = stem === undefined ? undefined : known.find((candidate) => split(candidate)[0] === stem);
  if (sibling !== undefined && unit !== undefined) {
    const factor = CONVERSIONS[split(sibling)[1] ?? '']?.[unit];
    const converted =
      number === undefined || factor === undefined ? 'a number' : Number((number * factor).toPrecision(6));
    return {
      code: 'wrong-unit',
      message: `"${stem}" is not written in ${unit.slice(0, 20)} here`,
      instead: `${sibling}: ${converted}`,
      meant: sibling,
    };
  }
  const meant = nearest(key, known);
  const message = `${owner} knows no "${key.slice(0, 60)}"; it knows ${known.join(', ')}`;
  // `resistance_ohm: 1,5` in braces is 1 and a key "5": leaving it out would leave 1.
  const decimals = /^\d+$/.test(key) && value === null;
  if (meant === undefined)
    return {
      code: 'unknown-key',
      message,
      instead: decimals ? `a decimal point before ${key.slice(0, 20)}, not a comma` : 'nothing: leave it out',
    };
  return {
    code: 'unknown-key',
    message,
    instead: isObject(value) ? meant : `${meant}: ${written(value).slice(0, 60)}`,
    meant,
  };
}

function split(key: string): readonly [string | undefined, string | undefined] {
  const last = key.lastIndexOf('_');
  return last < 1 ? [undefined, undefined] : [key.slice(0, last), key.slice(last + 1)];
}
