import { armourMetal, likelyArmour, readArmour } from './armour.ts';
import { conduitMetal_mm2, likelyConduit, readConduit } from './conduit.ts';
import {
  conductorArea_mm2,
  likelyConductor,
  perMetre,
  readConductor,
  tableTemperature_C,
  type Raceway,
} from './conductor.ts';

/** A metre of whatever is written as a core of a cable: a conductor, the conduit it lies in, or its armour. */
export interface CoreMetre {
  readonly resistance_ohm_m: number;
  readonly reactance_ohm_m: number;
  readonly metal: 'Cu' | 'Al' | 'steel';
  readonly area_mm2: number;
  /** Without insulation of its own. */
  readonly bare: boolean;
}

// At 20 °C: steel of conduit and armour 1.38e-7 Ω·m with 4.5e-3 /K (4.7e-3 in other printings); aluminium 4.03e-3 /K.
const STEEL_ohm_m = 1.38e-7;
const STEEL_per_K = 4.5e-3;
const ALUMINIUM_per_K = 4.03e-3;

/** Ohms of a metre of a written core; undefined where no table has it.
 *  Conduit and armour have the d.c. resistance of their metal and no reactance. Steel carrying a fault current has more
 *  of both, so what flows is at most what is computed: a loop must pass with room to spare, or be measured.
 *  @param temperature_C absent: that of the core's own table, 75 °C (NEC) or 20 °C (all others) */
export function coreMetre(
  text: string,
  at: { readonly temperature_C?: number | undefined; readonly frequency_Hz: number; readonly raceway: Raceway },
): CoreMetre | undefined {
  const hot_K = (at.temperature_C ?? 20) - 20;
  const conduit = readConduit(text);
  if (conduit !== undefined) {
    const area_mm2 = conduitMetal_mm2(conduit);
    const resistance_ohm_m = (STEEL_ohm_m / (area_mm2 * 1e-6)) * (1 + STEEL_per_K * hot_K);
    return { resistance_ohm_m, reactance_ohm_m: 0, metal: 'steel', area_mm2, bare: true };
  }
  const armour = readArmour(text);
  if (armour !== undefined) {
    const { ohm_km, area_mm2 } = armourMetal(armour);
    const steel = armour.wires === 'SWA';
    const resistance_ohm_m = (ohm_km / 1000) * (1 + (steel ? STEEL_per_K : ALUMINIUM_per_K) * hot_K);
    return { resistance_ohm_m, reactance_ohm_m: 0, metal: steel ? 'steel' : 'Al', area_mm2, bare: true };
  }
  const conductor = readConductor(text);
  if (conductor === undefined) return undefined;
  const temperature_C = at.temperature_C ?? tableTemperature_C(conductor);
  return {
    ...perMetre(conductor, { ...at, temperature_C }),
    metal: conductor.metal,
    area_mm2: conductorArea_mm2(conductor),
    bare: conductor.bare,
  };
}

/** Whether a table has a core that is written so. */
export function isCore(text: string): boolean {
  return [readConduit, readArmour, readConductor].some((read) => read(text) !== undefined);
}

/** The core of the tables that somebody probably meant. */
export function likelyCore(text: string): string {
  return likelyConduit(text) ?? likelyArmour(text) ?? likelyConductor(text);
}
