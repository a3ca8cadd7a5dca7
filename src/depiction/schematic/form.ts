import type { Part } from '../../installation/index.ts';

/** On which side of a box a wire leaves; the source stands west. */
export type Side = 'west' | 'east';

/** How a kind of part is built up on the sheet. */
export type Form =
  'source' | 'through' | 'transformer' | 'load' | 'bars' | 'two-pole' | 'electrode' | 'pipe' | 'person';

/** The form of a kind of part; `earth` is a joint with the earth itself. */
export function formOf(kind: Part['kind'] | 'earth'): Form {
  switch (kind) {
    case 'three-phase-transformer':
    case 'centre-tapped-transformer':
    case 'generator':
    case 'inverter':
      return 'source';
    case 'isolating-transformer':
    case 'ideal-transformer':
    case 'coupled-windings':
      return 'transformer';
    case 'cable':
    case 'breaker':
    case 'adjustable-breaker':
    case 'fuse':
    case 'device-by-points':
    case 'residual-device':
    case 'rcbo':
    case 'afci':
    case 'meter':
    case 'transfer-switch':
      return 'through';
    case 'appliance':
      return 'load';
    case 'panel':
    case 'service-panel':
    case 'fitting':
    case 'outlet':
      return 'bars';
    case 'rod':
    case 'rods':
    case 'strip':
    case 'ring':
    case 'plate':
    case 'grid':
    case 'soil':
    case 'floor':
    case 'earth':
      return 'electrode';
    case 'pipe':
    case 'structural-steel':
      return 'pipe';
    case 'person':
      return 'person';
    case 'source':
    case 'impedance':
    case 'capacitance':
    case 'switch':
    case 'harmonic-source':
    case 'fixed-body':
    case 'joint':
    case 'insulation-monitor':
      return 'two-pole';
    default:
      return kind satisfies never;
  }
}

/** The side of a terminal, where its part decides; undefined where the rest of the circuit does.
 *  @param terminal its name after the part's */
export function fixedSide(kind: Part['kind'] | 'earth', terminal: string): Side | undefined {
  switch (formOf(kind)) {
    case 'source':
      return 'east';
    case 'through':
      return terminal.endsWith('load') ? 'east' : 'west';
    case 'transformer':
      return terminal === 'case'
        ? undefined
        : terminal.startsWith('primary')
          ? 'west'
          : kind === 'isolating-transformer'
            ? 'east'
            : undefined;
    case 'load':
      return terminal === 'case' ? undefined : 'west';
    case 'electrode':
      return 'west';
    case 'person':
    case 'bars':
    case 'two-pole':
    case 'pipe':
      return undefined;
  }
}
