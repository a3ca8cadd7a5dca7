import { bandOperation, type Band } from './band.ts';
import { iec61008Band, type Iec61008Settings } from './iec61008.ts';
import { assertMagnitude, firstOf, type Operation, type Seen, type Tolerance } from './operation.ts';
import { ul943GroundedNeutral, ul943Residual } from './ul943.ts';

/** Ground-fault protection of equipment, such as of heating cable: not for people. */
export interface EquipmentSettings {
  readonly family: 'equipment';
  readonly residual_A: number;
}

/** A residual-current device as bought. */
export type ResidualSettings = { readonly family: 'ul943-class-a' } | Iec61008Settings | EquipmentSettings;

/** When this device opens at this steady residual current (r.m.s. A), s from now.
 *  @throws RangeError for a current or rating that is no such thing */
export function residualOperation(
  settings: ResidualSettings,
  residual_A: number,
  tolerance: Tolerance = 'middle',
  more: Omit<Seen, 'amperes' | 'residual_A'> = {},
): Operation {
  assertMagnitude('The residual current', residual_A);
  const seen = { ...more, amperes: 0, residual_A };
  return firstOf(residualBands(settings, seen).map((band) => bandOperation(band, seen, tolerance)));
}

/** From this residual current on a device must act, A: IΔn, or 6 mA of class A. */
export function mustActFrom_A(settings: ResidualSettings): number {
  return settings.family === 'ul943-class-a' ? (ul943Residual.slow?.points[0]?.[0] ?? NaN) : settings.residual_A;
}

/** The elements of a residual device, for what it sees. */
export function residualBands(settings: ResidualSettings, seen: Seen): readonly Band[] {
  switch (settings.family) {
    case 'ul943-class-a':
      return [ul943Residual, ul943GroundedNeutral];
    case 'iec61008':
      assertRated(settings.residual_A);
      return [iec61008Band(settings, seen)];
    case 'equipment':
      assertRated(settings.residual_A);
      return [equipmentBand(settings.residual_A)];
  }
}

/** Acts between half and the whole of its setting within 0.1 s, a fast one within half a cycle: common practice, no source
 *  (NEC 426.28 and 427.22 only ask for such a device). */
function equipmentBand(residual_A: number): Band {
  return {
    acts: 'residual',
    feels: 'residual',
    fast: { points: [[0.5 * residual_A * (1 + 1e-9), 1 / 120]], beyond: 'flat' },
    slow: { points: [[residual_A, 0.1]], beyond: 'flat' },
  };
}

function assertRated(residual_A: number): void {
  if (!(residual_A > 0 && residual_A < Infinity)) {
    throw new RangeError(`A residual device is rated ${residual_A} A: write a finite residual current above zero`);
  }
}
