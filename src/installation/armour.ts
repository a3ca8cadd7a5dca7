/** The wires round a cable, which may be its protective conductor, as written: `SWA 2.5 mm² 3-core` (steel), `AWA 95 mm²`
 *  (aluminium, round one core). The size is that of the cores inside. */
export interface Armour {
  readonly wires: 'SWA' | 'AWA';
  readonly size_mm2: string;
  readonly cores: number;
}

/** Steel wire armour at 20 °C, Ω/km, of cables with 2, 3, 4, 5 cores (BS 5467 and BS 6724 makers' tables, seen second-hand). */
const STEEL_ohm_km: Readonly<Record<string, readonly number[]>> = {
  '1.5': [10.2, 9.5, 8.8, 8.2],
  '2.5': [8.8, 8.2, 7.7, 6.8],
  '4': [7.9, 7.5, 6.8, 6.2],
  '6': [7.0, 6.7, 4.3, 3.9],
};

/** Section of the armour of two-core cable, mm² (BS 5467, seen second-hand). */
const STEEL_mm2: Readonly<Record<string, number>> = {
  '1.5': 15,
  '2.5': 17,
  '4': 19,
  '6': 22,
  '10': 26,
  '16': 42,
  '25': 42,
  '35': 60,
  '50': 68,
  '70': 80,
  '95': 113,
  '120': 125,
};

// Steel of 1.38e-7 Ω·m in wires a tenth longer than the cable, for their lay: meets the printed two-core rows within 2 %.
const STEEL_ohm_mm2_km = 138;
const LAY = 1.1;

/** Aluminium wire armour round a single copper core, 600/1000 V, 20 °C, Ω/km (BS 5467 makers' table, seen second-hand). */
const ALUMINIUM_ohm_km: Readonly<Record<string, number>> = {
  '50': 1.3,
  '70': 0.75,
  '95': 0.67,
  '120': 0.61,
  '150': 0.42,
  '185': 0.38,
  '240': 0.34,
};

// Aluminium wire, Ω·mm²/km at 20 °C (IEC 60889, from memory).
const ALUMINIUM_ohm_mm2_km = 28.264;

const WRITTEN = /^(?<wires>SWA|AWA)\s+(?<size>\d+(?:\.\d+)?)\s*mm[²2](?:\s+(?<cores>[1-5])-core)?$/u;

/** Reads `SWA 2.5 mm² 3-core`, `SWA 16 mm²` (two cores) or `AWA 95 mm²`; undefined where no table has it. */
export function readArmour(text: string): Armour | undefined {
  const groups = WRITTEN.exec(text.trim())?.groups;
  if (groups === undefined) return undefined;
  const wires = groups.wires === 'AWA' ? 'AWA' : 'SWA';
  const cores = groups.cores === undefined ? (wires === 'SWA' ? 2 : 1) : Number(groups.cores);
  const armour: Armour = { wires, size_mm2: groups.size ?? '', cores };
  return tabulated(armour) === undefined ? undefined : armour;
}

/** Resistance of a kilometre at 20 °C, Ω, and section, mm². */
export function armourMetal({ wires, size_mm2, cores }: Armour): {
  readonly ohm_km: number;
  readonly area_mm2: number;
} {
  const metal = tabulated({ wires, size_mm2, cores });
  if (metal === undefined) throw new RangeError(`armourMetal: no table has ${wires} ${size_mm2} mm² ${cores}-core`);
  return metal;
}

/** The armour that somebody probably meant: of a size no table has that of the next thicker cable; undefined if nothing here reads like one. */
export function likelyArmour(text: string): string | undefined {
  if (!/swa|awa|armou?r/iu.test(text)) return undefined;
  const aluminium = /awa/iu.test(text);
  const wanted = Number.parseFloat(/\d+(?:\.\d+)?/u.exec(text)?.[0] ?? '0');
  const sizes = Object.keys(aluminium ? ALUMINIUM_ohm_km : STEEL_mm2).sort((one, other) => Number(one) - Number(other));
  const size = sizes.find((each) => Number(each) >= wanted) ?? sizes.at(-1) ?? '';
  return aluminium ? `AWA ${size} mm²` : `SWA ${size} mm² 2-core`;
}

function tabulated({ wires, size_mm2, cores }: Armour) {
  if (wires === 'AWA') {
    const ohm_km = Object.hasOwn(ALUMINIUM_ohm_km, size_mm2) ? ALUMINIUM_ohm_km[size_mm2] : undefined;
    if (ohm_km === undefined || cores !== 1) return undefined;
    return { ohm_km, area_mm2: (ALUMINIUM_ohm_mm2_km * LAY) / ohm_km };
  }
  const printed = Object.hasOwn(STEEL_ohm_km, size_mm2) ? STEEL_ohm_km[size_mm2]?.[cores - 2] : undefined;
  if (printed !== undefined) return { ohm_km: printed, area_mm2: (STEEL_ohm_mm2_km * LAY) / printed };
  const area_mm2 = Object.hasOwn(STEEL_mm2, size_mm2) ? STEEL_mm2[size_mm2] : undefined;
  if (area_mm2 === undefined || cores !== 2) return undefined;
  return { ohm_km: (STEEL_ohm_mm2_km * LAY) / area_mm2, area_mm2 };
}
