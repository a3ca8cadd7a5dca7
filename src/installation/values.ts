import type { Phasors, Values } from '../electrics/index.ts';
import type { Build, DeviceInfo } from './build.ts';
import type { Conditions } from './conditions.ts';
import type { CurrentSources } from './currentSources.ts';
import type { Action } from './effects.ts';
import type { Installation } from './installation.ts';
import type { Laid } from './laid.ts';
import { AWAY_OHM, GAP_OHM, LEAST_OHM } from './plan.ts';

interface Indexed {
  readonly adds: readonly Change[];
  readonly closes: readonly Change[];
  readonly opens: readonly number[];
}

interface Change {
  readonly branch: number;
  readonly ohm: number;
}

const NOTHING: Indexed = { adds: [], closes: [], opens: [] };

/** The function that gives every branch its values. All that does not depend on what is chosen is worked out here, once. */
export function valuesOf(
  laid: readonly Laid[],
  coupling: readonly Phasors[],
  actions: ReadonlyMap<string, Action>,
  devices: readonly DeviceInfo[],
  installation: Installation,
  branch: (name: string) => number,
  { currents }: CurrentSources,
): Build['values'] {
  const base = phasorsOf(laid);
  const emf: Phasors = {
    re: Float64Array.from(laid, ({ emf_V = 0, angle_rad = 0 }) => emf_V * Math.cos(angle_rad)),
    im: Float64Array.from(laid, ({ emf_V = 0, angle_rad = 0 }) => emf_V * Math.sin(angle_rad)),
  };
  const changes = (list: readonly { readonly branch: string; readonly resistance_ohm: number }[]): readonly Change[] =>
    list.map((change) => ({ branch: branch(change.branch), ohm: Math.max(change.resistance_ohm, LEAST_OHM) }));
  const switches = new Map(
    Object.entries(installation.conditions).map(([name, { options }]) => {
      const indexed = options.map((option) => {
        const effect = actions.get(name)?.effects.get(option);
        const { adds = [], closes = [], opens = [] } = effect ?? {};
        return [
          option,
          effect ? { adds: changes(adds), closes: changes(closes), opens: opens.map(branch) } : NOTHING,
        ] as const;
      });
      return [name, { first: options[0] ?? '', effects: new Map<string, Indexed>(indexed) }] as const;
    }),
  );
  const poles = new Map(devices.map((device) => [device.name, device.poles]));

  const none: Phasors = { re: new Float64Array(laid.length), im: new Float64Array(laid.length) };

  return (conditions: Conditions, open, limb_ohm, order = 1): Values => {
    for (const name in conditions) known(switches.get(name), 'condition', name);
    const chosen: Indexed[] = [];
    for (const [name, { first, effects }] of switches) {
      const option = conditions[name] ?? first;
      const effect = known(effects.get(option), `option of "${name}"`, option);
      if (effect !== NOTHING) chosen.push(effect);
    }
    const re = base.re.slice();
    const im = base.im.slice();
    const cut = (at: number): void => {
      re[at] = GAP_OHM;
      im[at] = 0;
    };
    for (const { adds } of chosen) for (const add of adds) re[add.branch] = (re[add.branch] ?? 0) + add.ohm;
    for (const { closes } of chosen) for (const close of closes) re[close.branch] = close.ohm;
    // Opening comes last: a conductor that is both loose and off is off.
    for (const { opens } of chosen) opens.forEach(cut);
    for (const device of open) known(poles.get(device), 'device', device).forEach(cut);
    if (limb_ohm !== undefined) for (const [at, ohm] of limb_ohm) re[at] = Math.min(Math.max(ohm, LEAST_OHM), AWAY_OHM);
    const injection = currents?.({ re, im }, order, new Set(chosen.flatMap(({ opens }) => opens)));
    return {
      impedance: order === 1 ? { re, im } : { re, im: atOrder(im, order) },
      emf: order === 1 ? emf : none,
      coupling: order === 1 ? coupling : coupling.map((own) => coupledAtOrder(own, order)),
      ...(injection === undefined ? {} : { injection }),
    };
  };
}

/** Reactances at a multiple of the frequency: of an inductance as many times larger, of a capacitance smaller. Resistances
 *  are left as they are, though in thick conductors they grow a little. */
function atOrder(reactance_ohm: Float64Array, order: number): Float64Array {
  return reactance_ohm.map((ohm) => (ohm < 0 ? ohm / order : ohm * order));
}

/** The same of a coupling: what windings have in common is inductance, whatever its sign. */
function coupledAtOrder({ re, im }: Phasors, order: number): Phasors {
  const own = Math.sqrt(im.length) + 1;
  return { re, im: im.map((ohm, at) => (ohm < 0 && at % own === 0 ? ohm / order : ohm * order)) };
}

/** Impedances as built, as phasors; no resistance below what the solver calls a conductor. */
export function phasorsOf(laid: readonly Laid[]): Phasors {
  return {
    re: Float64Array.from(laid, ({ resistance_ohm }) => Math.max(resistance_ohm, LEAST_OHM)),
    im: Float64Array.from(laid, ({ reactance_ohm }) => reactance_ohm),
  };
}

/** What was found.
 *  @throws RangeError naming what there is not */
export function known<T>(found: T | undefined, what: string, name: string): T {
  if (found === undefined) throw new RangeError(`There is no ${what} called "${name}"`);
  return found;
}
