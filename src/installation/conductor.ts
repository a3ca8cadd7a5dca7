import { nearest } from './nearest.ts';

/** A conductor by size and metal, as written on a drum: `12 AWG Cu`, `2 AWG Al`, `250 kcmil Cu`, `2.5 mm² Cu flexible`,
 *  `4 AWG Cu bare`. */
export interface Conductor {
  readonly metal: 'Cu' | 'Al';
  /** AWG (`1/0` …) or kcmil as text, or mm² as text. */
  readonly size: string;
  readonly system: 'AWG' | 'mm²';
  readonly make: 'solid' | 'stranded' | 'flexible';
  /** Coated (NEC) or tinned (IEC) copper. */
  readonly tinned: boolean;
  /** Without insulation: an overhead neutral, a buried electrode lead. */
  readonly bare: boolean;
}

/** What the conductor lies in; decides a.c. resistance and reactance by NEC table 9. */
export type Raceway = 'none' | 'pvc' | 'aluminium' | 'steel';

/** Ohms for a metre of one conductor. */
export interface PerMetre {
  readonly resistance_ohm_m: number;
  readonly reactance_ohm_m: number;
}

const KFT_m = 304.8;

/** NEC (NFPA 70) chapter 9 table 8: d.c. resistance at 75 °C, Ω/kft:
 *  uncoated copper solid, stranded; coated copper solid, stranded; aluminium solid, stranded. From 6 AWG stranded only. */
const NEC_TABLE_8: Readonly<Record<string, readonly [number, number, number, number, number, number]>> = {
  '14': [3.07, 3.14, 3.19, 3.26, 5.06, 5.17],
  '12': [1.93, 1.98, 2.01, 2.05, 3.18, 3.25],
  '10': [1.21, 1.24, 1.26, 1.29, 2.0, 2.04],
  '8': [0.764, 0.778, 0.786, 0.809, 1.26, 1.28],
  '6': [0.491, 0.491, 0.51, 0.51, 0.808, 0.808],
  '4': [0.308, 0.308, 0.321, 0.321, 0.508, 0.508],
  '3': [0.245, 0.245, 0.254, 0.254, 0.403, 0.403],
  '2': [0.194, 0.194, 0.201, 0.201, 0.319, 0.319],
  '1': [0.154, 0.154, 0.16, 0.16, 0.253, 0.253],
  '1/0': [0.122, 0.122, 0.127, 0.127, 0.201, 0.201],
  '2/0': [0.0967, 0.0967, 0.101, 0.101, 0.159, 0.159],
  '3/0': [0.0766, 0.0766, 0.0797, 0.0797, 0.126, 0.126],
  '4/0': [0.0608, 0.0608, 0.0626, 0.0626, 0.1, 0.1],
  '250': [0.0515, 0.0515, 0.0535, 0.0535, 0.0847, 0.0847],
  '500': [0.0258, 0.0258, 0.0265, 0.0265, 0.0424, 0.0424],
};

/** NEC (NFPA 70) chapter 9 table 9: 600 V, three singles in conduit, 60 Hz, 75 °C, Ω/kft to neutral:
 *  X in PVC or aluminium, X in steel; R copper in PVC, aluminium, steel; R aluminium in PVC, aluminium, steel.
 *  14 AWG aluminium is not in the table. Rows 250 and 500 kcmil are from memory. */
const NEC_TABLE_9: Readonly<Record<string, readonly number[]>> = {
  '14': [0.058, 0.073, 3.1, 3.1, 3.1],
  '12': [0.054, 0.068, 2.0, 2.0, 2.0, 3.2, 3.2, 3.2],
  '10': [0.05, 0.063, 1.2, 1.2, 1.2, 2.0, 2.0, 2.0],
  '8': [0.052, 0.065, 0.78, 0.78, 0.78, 1.3, 1.3, 1.3],
  '6': [0.051, 0.064, 0.49, 0.49, 0.49, 0.81, 0.81, 0.81],
  '4': [0.048, 0.06, 0.31, 0.31, 0.31, 0.51, 0.51, 0.51],
  '3': [0.047, 0.059, 0.25, 0.25, 0.25, 0.4, 0.41, 0.4],
  '2': [0.045, 0.057, 0.19, 0.2, 0.2, 0.32, 0.32, 0.32],
  '1': [0.046, 0.057, 0.15, 0.16, 0.16, 0.25, 0.26, 0.25],
  '1/0': [0.044, 0.055, 0.12, 0.13, 0.12, 0.2, 0.21, 0.2],
  '2/0': [0.043, 0.054, 0.1, 0.1, 0.1, 0.16, 0.16, 0.16],
  '3/0': [0.042, 0.052, 0.077, 0.082, 0.079, 0.13, 0.13, 0.13],
  '4/0': [0.041, 0.051, 0.062, 0.067, 0.063, 0.1, 0.11, 0.1],
  '250': [0.041, 0.052, 0.052, 0.057, 0.054, 0.085, 0.09, 0.086],
  '500': [0.039, 0.048, 0.027, 0.032, 0.029, 0.043, 0.048, 0.045],
};

/** IEC 60228: largest d.c. resistance at 20 °C, Ω/km: copper class 1 and 2, plain; class 2 tinned; class 5 plain;
 *  class 5 tinned; aluminium class 1 and 2. */
const IEC_60228: Readonly<Record<string, readonly number[]>> = {
  '0.5': [36.0, 36.7, 39.0, 40.1],
  '0.75': [24.5, 24.8, 26.0, 26.7],
  '1': [18.1, 18.2, 19.5, 20.0],
  '1.5': [12.1, 12.2, 13.3, 13.7],
  '2.5': [7.41, 7.56, 7.98, 8.21],
  '4': [4.61, 4.7, 4.95, 5.09],
  '6': [3.08, 3.11, 3.3, 3.39],
  '10': [1.83, 1.84, 1.91, 1.95, 3.08],
  '16': [1.15, 1.16, 1.21, 1.24, 1.91],
  '25': [0.727, 0.734, 0.78, 0.795, 1.2],
  '35': [0.524, 0.529, 0.554, 0.565, 0.868],
  '50': [0.387, 0.391, 0.386, 0.393, 0.641],
  '70': [0.268, 0.27, 0.272, 0.277, 0.443],
  '95': [0.193, 0.195, 0.206, 0.21, 0.32],
  '120': [0.153, 0.154, 0.161, 0.164, 0.253],
};

// Reactance of low-voltage cable whatever its size, Ω/m at 50 Hz (common practice, IEC handbooks, from memory).
const IEC_REACTANCE_ohm_m = 0.08e-3;

const WRITTEN =
  /^(?<size>\d+\/0|\d+(?:\.\d+)?)\s*(?<unit>AWG|kcmil|mm²|mm2)\s+(?<metal>Cu|Al)(?:\s+(?<make>solid|stranded|flexible))?(?:\s+(?<tinned>tinned))?(?:\s+(?<bare>bare))?$/u;

/** Reads `12 AWG Cu`, `2 AWG Al stranded`, `2.5 mm² Cu flexible tinned`; undefined where no table has it. */
export function readConductor(text: string): Conductor | undefined {
  const groups = WRITTEN.exec(text.trim())?.groups;
  if (groups === undefined) return undefined;
  const system = groups.unit === 'AWG' || groups.unit === 'kcmil' ? 'AWG' : 'mm²';
  const size = groups.size ?? '';
  if (system === 'AWG' && /^\d{3}$/.test(size) !== (groups.unit === 'kcmil')) return undefined;
  const conductor: Conductor = {
    metal: groups.metal === 'Al' ? 'Al' : 'Cu',
    size,
    system,
    make: groups.make === 'stranded' || groups.make === 'flexible' ? groups.make : 'solid',
    tinned: groups.tinned !== undefined,
    bare: groups.bare !== undefined,
  };
  return tabulated(conductor) === undefined ? undefined : conductor;
}

/** Every conductor the tables hold, as it is written. */
export function knownConductors(): readonly string[] {
  const awg = Object.keys(NEC_TABLE_8).map((size) => `${size} ${/^\d{3}$/.test(size) ? 'kcmil' : 'AWG'}`);
  const mm2 = Object.keys(IEC_60228).map((size) => `${size} mm²`);
  const metals = ['Cu', 'Al'].flatMap((metal) => [...awg, ...mm2].map((size) => `${size} ${metal}`));
  return metals.filter((text) => readConductor(text) !== undefined);
}

/** The conductor of the tables that somebody probably meant: of a size no table has the next thicker. */
export function likelyConductor(text: string): string {
  const groups = /^(?<size>\d+(?:\.\d+)?)\s*(?<unit>AWG|mm²|mm2)\s+(?<metal>Cu|Al)$/iu.exec(text.trim())?.groups;
  const known = knownConductors();
  if (groups === undefined) return nearest(text, known) ?? '12 AWG Cu';
  const metal = groups.metal?.toLowerCase() === 'al' ? 'Al' : 'Cu';
  const awg = groups.unit?.toLowerCase() === 'awg';
  const wanted = Number(groups.size);
  const thicker = Object.keys(awg ? NEC_TABLE_8 : IEC_60228)
    .filter((size) => known.includes(`${size} ${awg ? 'AWG' : 'mm²'} ${metal}`))
    .map(Number)
    .filter((size) => (awg ? size <= wanted : size >= wanted))
    .sort((one, two) => Math.abs(one - wanted) - Math.abs(two - wanted))[0];
  if (thicker === undefined) return nearest(text, known) ?? '12 AWG Cu';
  return `${thicker} ${awg ? 'AWG' : 'mm²'} ${metal}`;
}

/** Resistance and reactance of a metre at this temperature and frequency, Ω/m.
 *  Without a raceway R is the d.c. table (NEC 8 or IEC 60228) and X that of singles in PVC; in a raceway both are NEC table 9.
 *  @throws RangeError if no table has the conductor
 *  @see NEC chapter 9 table 8 note 2: R2 = R1·[1 + α·(T2 − 75)]; IEC 60228 coefficients at 20 °C */
export function perMetre(
  conductor: Conductor,
  at: { readonly temperature_C: number; readonly frequency_Hz: number; readonly raceway: Raceway },
): PerMetre {
  const dc = tabulated(conductor);
  if (dc === undefined)
    throw new RangeError(`perMetre: no table has ${conductor.size} ${conductor.system} ${conductor.metal}`);
  const ac = conductor.system === 'AWG' ? NEC_TABLE_9[conductor.size] : undefined;
  const hot = temperatureFactor(conductor, at.temperature_C);
  const tabulatedX = ac?.[at.raceway === 'steel' ? 1 : 0];
  const reactance_ohm_m =
    tabulatedX === undefined
      ? (IEC_REACTANCE_ohm_m * at.frequency_Hz) / 50
      : ((tabulatedX / KFT_m) * at.frequency_Hz) / 60;
  const offset = (conductor.metal === 'Cu' ? 2 : 5) + { none: 0, pvc: 0, aluminium: 1, steel: 2 }[at.raceway];
  const tabulatedR = at.raceway === 'none' ? undefined : ac?.[offset];
  return { resistance_ohm_m: (tabulatedR === undefined ? dc : tabulatedR / KFT_m) * hot, reactance_ohm_m };
}

/** Section of the metal, mm²: as named, or by the gauge's own rule, d = 0.127 mm · 92^((36 − n) / 39) (ASTM B258, from memory). */
export function conductorArea_mm2({ size, system }: Conductor): number {
  if (system === 'mm²') return Number(size);
  if (/^\d{3}$/.test(size)) return Number(size) * 0.506707;
  const gauge = size.endsWith('/0') ? 1 - Number(size.slice(0, -2)) : Number(size);
  return (Math.PI / 4) * (0.127 * 92 ** ((36 - gauge) / 39)) ** 2;
}

function tabulated({ metal, size, system, make, tinned }: Conductor): number | undefined {
  if (system === 'AWG') {
    const row = Object.hasOwn(NEC_TABLE_8, size) ? NEC_TABLE_8[size] : undefined;
    if (make === 'flexible' || (metal === 'Al' && tinned)) return undefined;
    const ohm_kft = row?.[(metal === 'Al' ? 4 : tinned ? 2 : 0) + (make === 'solid' ? 0 : 1)];
    return ohm_kft === undefined ? undefined : ohm_kft / KFT_m;
  }
  const row = Object.hasOwn(IEC_60228, size) ? IEC_60228[size] : undefined;
  if (metal === 'Al' && (tinned || make === 'flexible')) return undefined;
  const ohm_km = row?.[metal === 'Al' ? 4 : (make === 'flexible' ? 2 : 0) + (tinned ? 1 : 0)];
  return ohm_km === undefined ? undefined : ohm_km / 1000;
}

// NEC: α at 75 °C. IEC: α at 20 °C, IEC 60228 and IEC 60909 practice.
function temperatureFactor({ metal, system }: Conductor, temperature_C: number): number {
  return system === 'AWG'
    ? 1 + (metal === 'Cu' ? 0.00323 : 0.0033) * (temperature_C - 75)
    : 1 + (metal === 'Cu' ? 0.00393 : 0.00403) * (temperature_C - 20);
}

/** Temperature at which the conductor's own table is printed, °C: 75 (NEC), 20 (IEC). */
export function tableTemperature_C(conductor: Conductor): number {
  return conductor.system === 'AWG' ? 75 : 20;
}
