/** Soil and floor by name: typical resistivity and the range it was seen in, Ω·m. */
export interface Soil {
  readonly typical_ohm_m: number;
  readonly from_ohm_m: number;
  readonly to_ohm_m: number;
  readonly source: string;
}

const NBS = 'NBS Technologic Paper 108, seen second-hand';

/** Soils and floors that an installation may name. */
export const soils = {
  'ashes and cinders': { typical_ohm_m: 23.7, from_ohm_m: 5.9, to_ohm_m: 70, source: NBS },
  'clay and loam': { typical_ohm_m: 40.6, from_ohm_m: 3.4, to_ohm_m: 163, source: NBS },
  'clay with sand and gravel': { typical_ohm_m: 158, from_ohm_m: 10.2, to_ohm_m: 1350, source: NBS },
  'sand and gravel': { typical_ohm_m: 940, from_ohm_m: 590, to_ohm_m: 4580, source: NBS },
  'wet concrete': {
    typical_ohm_m: 65,
    from_ohm_m: 21,
    to_ohm_m: 200,
    source: 'range IEEE Std 80-2013 table 7, from memory; typical is the geometric mean of the range',
  },
} as const satisfies Readonly<Record<string, Soil>>;
