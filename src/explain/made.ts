import type { Condition } from '../installation/index.ts';
import { quantity } from './quantity.ts';
import { partOf } from './route.ts';
import { capital, isWordKey, say } from './say.ts';
import type { Vocabulary } from './vocabulary.ts';

/** A fault of less is told as solid, Ω (invented: as much as a firm screw or two). */
const SOLID_OHM = 0.1;
/** Metal that somebody can touch, by its terminal. */
const METAL = /^(case|frame|earth bar|metal|protective|bond|tap)$/;

type Named = (part: string, vocabulary: Vocabulary) => string;

/** What a condition acts on: terminals, a conductor, a device, a person. */
export function targetOf(made: Condition): readonly string[] {
  switch (made.kind) {
    case 'insulation-fault':
    case 'link':
      return made.between;
    case 'open':
    case 'loose':
      return made.at === undefined ? (made.between ?? []) : [made.at];
    case 'swap':
      return made.ends;
    case 'move':
      return [made.end, made.to];
    case 'setting':
    case 'jammed':
    case 'fitted':
      return [made.device];
    case 'running':
      return [made.appliance];
    case 'transfer':
      return [made.switch];
    default:
      return [made.person];
  }
}

/** The resistance of a fault's option in words, unless it is solid or not there. */
export function throughOhms(made: Condition, option: string): string | undefined {
  const ohm = made.kind === 'insulation-fault' ? made.resistance_ohm[option] : undefined;
  return ohm === undefined || ohm < SOLID_OHM ? undefined : quantity(ohm, 'Ω');
}

/** A condition told by its kind and the parts it acts on: every fault, and whatever is put right; undefined where the file’s
 *  own words tell more. */
export function madeSentence(made: Condition, option: string, vocabulary: Vocabulary, name: Named): string | undefined {
  const off = option === made.options[0];
  const [one = '', other = ''] = targetOf(made);
  const end = (terminal: string): string => endText(terminal, vocabulary, name);
  const told = (kind: string, values: Readonly<Record<string, string>>): string | undefined => {
    const key = `made.${kind}`;
    return isWordKey(key) ? capital(say(key, vocabulary, values)) : undefined;
  };
  if (made.kind === 'insulation-fault') {
    const metal = METAL.test(innerOf(one)) && !METAL.test(innerOf(other));
    const [live, case_] = metal ? [other, one] : [one, other];
    const values = { one: liveText(live, case_, vocabulary, name), other: end(case_) };
    const ohms = throughOhms(made, option);
    if (off) return told('touches.no', values);
    return ohms === undefined ? told('touches', values) : told('touches.through', { ...values, ohms });
  }
  if (!off || made.group === 'person') return undefined;
  if (made.kind === 'open') {
    const core = made.at?.includes('.') === true;
    const kind = made.at === undefined ? 'open.between' : core ? 'open.core' : 'open';
    return told(`${kind}.no`, { one: core ? coreText(one, vocabulary, name) : end(one), other: end(other) });
  }
  // A thing that moves belongs where it comes from.
  const home = made.kind === 'move' ? made.from : other;
  return told(`${made.kind}.no`, { part: name(one, vocabulary), one: end(one), other: end(home) });
}

function innerOf(terminal: string): string {
  return terminal.slice(partOf(terminal).length + 1).replace(/\.(supply|load)$/, '');
}

/** A conductor by its role: the trade's word for it, or its letter. */
function conductorText(inner: string, vocabulary: Vocabulary): string {
  if (inner === 'line' || inner === 'protective') return say(`made.${inner}`, vocabulary);
  return /^[a-z]$/.test(inner) ? `${say('made.line', vocabulary)} ${inner}` : inner;
}

function coreText(terminal: string, vocabulary: Vocabulary, name: Named): string {
  const what = conductorText(innerOf(terminal), vocabulary);
  return say('made.of', vocabulary, { what, part: name(partOf(terminal), vocabulary) });
}

function liveText(live: string, metal: string, vocabulary: Vocabulary, name: Named): string {
  if (!/^(line|neutral|PEN|[a-z])$/.test(innerOf(live))) return endText(live, vocabulary, name);
  if (partOf(live) === partOf(metal)) return conductorText(innerOf(live), vocabulary);
  return coreText(live, vocabulary, name);
}

function endText(terminal: string, vocabulary: Vocabulary, name: Named): string {
  const part = partOf(terminal);
  const inner = innerOf(terminal);
  const the = `the ${name(part, vocabulary)}`;
  if (inner === 'case' || inner === 'frame') return `${the}${the.endsWith('s') ? '’' : '’s'} ${inner}`;
  return /^(neutral|neutral bar|earth bar|[a-z])$/.test(inner) ? coreText(terminal, vocabulary, name) : the;
}
