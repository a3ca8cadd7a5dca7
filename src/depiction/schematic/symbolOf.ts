import type { BranchInfo, Part } from '../../installation/index.ts';

/** The symbols of the sheet; `charts` knows how each is drawn in either standard. */
export type SymbolName =
  | 'winding'
  | 'generator'
  | 'inverter'
  | 'source'
  | 'cell'
  | 'breaker'
  | 'fuse'
  | 'residual'
  | 'residual breaker'
  | 'switch'
  | 'resistor'
  | 'load'
  | 'lamp'
  | 'motor'
  | 'capacitor'
  | 'meter'
  | 'monitor'
  | 'link'
  | 'fault'
  | 'body'
  | 'current'
  | 'electrode'
  | 'floor'
  | 'earth';

const LAMP = /lamp|light/i;
const MOTOR = /motor|mixer|pump|saw|extractor|washer|drill|fan/i;

/** The symbol of one branch inside a part; undefined for a plain conductor.
 *  @param opens it is a contact that its device opens
 *  @param direct the installation works with direct current */
export function symbolOf(
  made: Part | undefined,
  info: BranchInfo,
  opens: boolean,
  direct: boolean,
): SymbolName | undefined {
  if (info.role === 'fault') return 'fault';
  switch (made?.kind) {
    case 'three-phase-transformer':
    case 'centre-tapped-transformer':
    case 'isolating-transformer':
    case 'ideal-transformer':
    case 'coupled-windings':
      return 'winding';
    case 'generator':
      return 'generator';
    case 'inverter':
      return 'inverter';
    case 'source':
      return direct ? 'cell' : 'source';
    case 'breaker':
    case 'adjustable-breaker':
    case 'device-by-points':
      return 'breaker';
    case 'fuse':
      return 'fuse';
    case 'residual-device':
      return opens ? 'residual' : undefined;
    case 'rcbo':
    case 'afci':
      return opens ? 'residual breaker' : undefined;
    case 'switch':
    case 'transfer-switch':
      return 'switch';
    case 'impedance':
      return info.role === 'load' ? 'load' : 'resistor';
    case 'capacitance':
      return 'capacitor';
    case 'harmonic-source':
      return 'current';
    case 'fixed-body':
      return 'body';
    case 'appliance':
      return LAMP.test(info.part) ? 'lamp' : MOTOR.test(info.part) ? 'motor' : 'load';
    case 'meter':
      return 'meter';
    case 'insulation-monitor':
      return 'monitor';
    case 'joint':
      return 'link';
    default:
      return undefined;
  }
}
