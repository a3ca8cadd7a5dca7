import type { Build } from '../../installation/index.ts';
import { label, name } from '../name.ts';
import { figure, quantity } from '../quantity.ts';
import { filled, type WordValues } from '../say.ts';
import type { Vocabulary } from '../vocabulary.ts';
import { VERDICT_WORDS, type VerdictKey } from '../words/verdicts.ts';
import { margin, type Verdict } from './verdict.ts';

/** One verdict as a row of a table. */
export interface ToldVerdict {
  readonly verdict: Verdict;
  readonly where: string;
  readonly what: string;
  readonly value: string;
  readonly limit: string;
  readonly margin: string;
  readonly judged: string;
}

/** Verdicts as a table: its heads, its rows, how many limits are met in one sentence, and where each limit comes from. */
export interface VerdictTable {
  readonly heading: string;
  readonly note: string;
  readonly heads: Readonly<Record<'where' | 'what' | 'value' | 'limit' | 'margin' | 'judged', string>>;
  readonly rows: readonly ToldVerdict[];
  readonly sum: string;
  readonly clausesHeading: string;
  readonly clauses: readonly string[];
  readonly caution: string;
}

/** Verdicts in words. */
export function tellVerdicts(build: Build, verdicts: readonly Verdict[], vocabulary: Vocabulary): VerdictTable {
  const say = (key: VerdictKey, values?: WordValues): string => filled(VERDICT_WORDS[key], vocabulary, values);
  const rows = verdicts.map((verdict) => rowOf(build, verdict, vocabulary, say));
  const count = (holds: Verdict['holds']): number => verdicts.filter((one) => one.holds === holds).length;
  const clauses = [...new Set(verdicts.map(({ clause }) => clause))].filter((clause) => clause !== 'none');
  return {
    heading: say('heading'),
    note: say('note'),
    heads: {
      where: say('where'),
      what: say('what'),
      value: say('value'),
      limit: say('limit'),
      margin: say('margin'),
      judged: say('judged'),
    },
    rows,
    sum: rows.length === 0 ? say('none') : say('sum', { no: count('no'), maybe: count('maybe') }),
    clausesHeading: say('clauses'),
    clauses: clauses.map((clause) => say(`clause.${clause}`)),
    caution: say('caution'),
  };
}

function rowOf(
  build: Build,
  verdict: Verdict,
  vocabulary: Vocabulary,
  say: (key: VerdictKey, values?: WordValues) => string,
): ToldVerdict {
  const { part, line, other, device, value, limit, sense, holds, size } = verdict;
  const left = margin(verdict);
  const told = (amount: number): string => {
    if (!Number.isFinite(amount)) return say(verdict.unit === 's' ? 'never' : 'unlimited');
    return verdict.unit === 'mm²' ? `${figure(amount)}\u00a0mm²` : quantity(amount, verdict.unit);
  };
  const sized = verdict.kind === 'protective-size' && size !== undefined ? size : told(limit ?? 0);
  return {
    verdict,
    where: label(part, vocabulary),
    what: say(whatOf(verdict), {
      line: lineName(build, part, line, vocabulary),
      other: name(other ?? '', vocabulary),
      device: name(device ?? '', vocabulary),
      size: size ?? '',
    }),
    value: told(value),
    limit: limit === undefined ? '' : say(sense === 'at most' ? 'at.most' : 'at.least', { limit: sized }),
    margin: left === undefined ? '' : leftOver(verdict, left, say),
    judged: say(`holds.${holds}`),
  };
}

function whatOf({ kind, other, device }: Verdict): VerdictKey {
  if (kind === 'monitor') return device === undefined ? 'kind.monitor.nobody' : 'kind.monitor';
  if (kind === 'disconnection') {
    const who = device === undefined ? ('kind.disconnection.nobody' as const) : ('kind.disconnection' as const);
    return other === undefined ? who : `${who}.second`;
  }
  return (kind === 'loop' || kind === 'case-volts') && other !== undefined ? `kind.${kind}.second` : `kind.${kind}`;
}

/** More times a limit than this need not be told apart. */
const MANY = 1000;

/** What is left of a limit in per cent; far beyond it how many times it is. */
function leftOver(
  { value, limit = 0, sense }: Verdict,
  left: number,
  say: (key: VerdictKey, values?: WordValues) => string,
): string {
  if (left >= -1) return `${figure(Math.round(left * 100))}\u00a0%`;
  if (!Number.isFinite(value) || sense === 'at least') return '';
  return say('times', { times: value > MANY * limit ? `> ${MANY}` : figure(value / limit) });
}

/** A line by its letter where a part has several, else by the trade's word. */
function lineName(build: Build, part: string, line: string | undefined, vocabulary: Vocabulary): string {
  const own = line?.slice(part.length + 1) ?? '';
  const several = build.network.nodes.filter((node) => node.startsWith(`${part}.`)).length > 3;
  return several || own === '' || own.length <= 2 ? own : filled('{line}', vocabulary);
}
