import type { Role } from './role.ts';
import type { Condition } from './conditions.ts';
import type { Installation } from './installation.ts';
import { transferContacts } from './parts/index.ts';
import { JOINT_OHM } from './plan.ts';
import type { TerminalName } from './terminal.ts';

/** What one chosen option does to the values of branches: own gaps close, joints get worse, contacts open. */
export interface Effect {
  readonly closes: readonly { readonly branch: string; readonly resistance_ohm: number }[];
  readonly adds: readonly { readonly branch: string; readonly resistance_ohm: number }[];
  readonly opens: readonly string[];
}

/** A branch that exists only for a condition: an open gap until the condition closes it. */
export interface OwnBranch {
  readonly name: string;
  readonly from: TerminalName;
  readonly to: TerminalName;
  readonly role: Role;
}

/** A condition as it acts on the network. */
export interface Action {
  readonly own: readonly OwnBranch[];
  /** By option; an option without an entry changes nothing. */
  readonly effects: ReadonlyMap<string, Effect>;
}

/** How a condition finds the joins it acts on. */
export interface Joins {
  /** The branch that joins these two terminals, in either order. */
  between(a: TerminalName, b: TerminalName): string | undefined;
  /** Joins at this terminal: their names and the terminal at the far end. */
  at(terminal: TerminalName): readonly { readonly name: string; readonly other: TerminalName }[];
}

const NOTHING: Effect = { closes: [], adds: [], opens: [] };

/** What a condition does to the network.
 *  @throws RangeError if the condition names a place that is not there (the loader reports it first) */
export function actionOf(name: string, condition: Condition, joins: Joins, installation: Installation): Action {
  const yes = (effect: Partial<Effect>, own: readonly OwnBranch[] = []): Action => ({
    own,
    effects: new Map([['yes', { ...NOTHING, ...effect }]]),
  });
  switch (condition.kind) {
    case 'insulation-fault': {
      const [from, to] = condition.between;
      const effects = Object.entries(condition.resistance_ohm).map(
        ([option, resistance_ohm]) => [option, { ...NOTHING, closes: [{ branch: name, resistance_ohm }] }] as const,
      );
      return { own: [{ name, from, to, role: 'fault' }], effects: new Map(effects) };
    }
    case 'open':
      return yes({ opens: [placeOf(name, condition, joins)] });
    case 'loose':
      return yes({
        adds: [{ branch: placeOf(name, condition, joins), resistance_ohm: condition.resistance_ohm }],
      });
    case 'link': {
      const [from, to] = condition.between;
      const resistance_ohm = condition.resistance_ohm ?? JOINT_OHM;
      return yes({ closes: [{ branch: name, resistance_ohm }] }, [{ name, from, to, role: 'link' }]);
    }
    case 'move': {
      const { end: from, to } = condition;
      const old = found(name, joins.between(from, condition.from));
      const resistance_ohm = condition.resistance_ohm ?? JOINT_OHM;
      return yes({ opens: [old], closes: [{ branch: name, resistance_ohm }] }, [
        { name, from, to, role: 'protective' },
      ]);
    }
    case 'swap': {
      const [one, two] = condition.ends.map((end) => ({ end, join: found(name, joins.at(end)[0]) }));
      const [a, b] = [found(name, one), found(name, two)];
      // Each end goes to where the other was; the branch is called after the terminal it lands on.
      const short = (terminal: TerminalName): string => terminal.slice(terminal.indexOf('.') + 1);
      const plain = short(a.join.other) !== short(b.join.other);
      const crossed = (from: typeof a, landing: typeof b): OwnBranch => ({
        name: `${name}.${plain ? short(landing.join.other) : landing.join.other}`,
        from: from.end,
        to: landing.join.other,
        role: 'link',
      });
      const own = [crossed(b, a), crossed(a, b)];
      const closes = own.map((branch) => ({ branch: branch.name, resistance_ohm: JOINT_OHM }));
      return yes({ opens: [a.join.name, b.join.name], closes }, own);
    }
    case 'running':
      return {
        own: [],
        effects: new Map([['no', { ...NOTHING, opens: [loadOf(condition.appliance, installation)] }]]),
      };
    case 'transfer': {
      const part = installation.parts[condition.switch];
      if (part?.kind !== 'transfer-switch')
        throw new RangeError(`compile: there is no transfer switch called "${condition.switch}"`);
      const { normal, alternative } = transferContacts(condition.switch, part);
      const closes = alternative.map((branch) => ({ branch, resistance_ohm: part.resistance_ohm }));
      return { own: [], effects: new Map([['alternative', { ...NOTHING, opens: normal, closes }]]) };
    }
    case 'setting':
    case 'jammed':
    case 'fitted':
    case 'touching':
    case 'footwear':
    case 'gloves':
    case 'mat':
      return { own: [], effects: new Map() };
    default:
      return condition satisfies never;
  }
}

function placeOf(
  name: string,
  place: { readonly at?: string | undefined; readonly between?: readonly [TerminalName, TerminalName] | undefined },
  joins: Joins,
): string {
  if (place.at !== undefined) return place.at;
  const [a, b] = found(name, place.between);
  return found(name, joins.between(a, b));
}

function loadOf(appliance: string, installation: Installation): string {
  if (Object.hasOwn(installation.parts, appliance)) return appliance;
  throw new RangeError(`compile: there is no appliance called "${appliance}"`);
}

function found<T>(condition: string, thing: T | undefined): T {
  if (thing === undefined)
    throw new RangeError(`compile: the condition "${condition}" acts on a place that is not there`);
  return thing;
}
