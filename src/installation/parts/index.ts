import { z } from 'zod';
import type { PartKind } from '../plan.ts';
import { adjustableBreaker } from './adjustableBreaker.ts';
import { afci } from './afci.ts';
import { appliance } from './appliance.ts';
import { breaker } from './breaker.ts';
import { cable } from './cable.ts';
import { capacitance } from './capacitance.ts';
import { centreTappedTransformer } from './centreTappedTransformer.ts';
import { coupledWindings } from './coupledWindings.ts';
import { deviceByPoints } from './deviceByPoints.ts';
import { fitting } from './fitting.ts';
import { fixedBody } from './fixedBody.ts';
import { floor } from './floor.ts';
import { fuse } from './fuse.ts';
import { generator } from './generator.ts';
import { grid } from './grid.ts';
import { harmonicSource } from './harmonicSource.ts';
import { idealTransformer } from './idealTransformer.ts';
import { impedance } from './impedance.ts';
import { insulationMonitor } from './insulationMonitor.ts';
import { inverter } from './inverter.ts';
import { isolatingTransformer } from './isolatingTransformer.ts';
import { joint } from './joint.ts';
import { meter } from './meter.ts';
import { outlet } from './outlet.ts';
import { panel } from './panel.ts';
import { person } from './person.ts';
import { pipe } from './pipe.ts';
import { plate } from './plate.ts';
import { rcbo } from './rcbo.ts';
import { residualDevice } from './residualDevice.ts';
import { ring } from './ring.ts';
import { rod } from './rod.ts';
import { rods } from './rods.ts';
import { servicePanel } from './servicePanel.ts';
import { soil } from './soil.ts';
import { source } from './source.ts';
import { strip } from './strip.ts';
import { structuralSteel } from './structuralSteel.ts';
import { plainSwitch } from './switch.ts';
import { threePhaseTransformer } from './threePhaseTransformer.ts';
import { transferSwitch } from './transferSwitch.ts';

export { transferContacts } from './transferSwitch.ts';

/** Every kind of part there is: a new kind is its file and a line here. */
const partKinds = [
  centreTappedTransformer,
  threePhaseTransformer,
  generator,
  inverter,
  source,
  impedance,
  capacitance,
  plainSwitch,
  coupledWindings,
  idealTransformer,
  harmonicSource,
  fixedBody,
  cable,
  rod,
  rods,
  strip,
  ring,
  plate,
  grid,
  soil,
  pipe,
  structuralSteel,
  breaker,
  adjustableBreaker,
  fuse,
  deviceByPoints,
  residualDevice,
  rcbo,
  afci,
  insulationMonitor,
  servicePanel,
  panel,
  transferSwitch,
  isolatingTransformer,
  meter,
  outlet,
  appliance,
  fitting,
  joint,
  floor,
  person,
] as const;

type SchemasOf<Kinds extends readonly { readonly schema: unknown }[]> = {
  [Index in keyof Kinds]: Kinds[Index]['schema'];
};

const described = partKinds.map(({ schema, ends }) => schema.meta({ description: `terminals: ${ends}` }));

/** One part in the file, told apart by its `kind`. */
// A mapped array keeps the order and the types of the list; only the type checker cannot see it.
export const partSchema = z
  .discriminatedUnion('kind', described as unknown as SchemasOf<typeof partKinds>)
  .meta({ examples: [{ kind: 'breaker', rating_A: 20 }] });

/** One part, complete with its defaults. */
export type Part = z.output<typeof partSchema>;

const byKind: ReadonlyMap<string, PartKind<Part>> = new Map(partKinds.map((kind) => [kind.kind, kind]));

/** The names of all kinds of part. */
export const partKindNames: readonly string[] = partKinds.map(({ kind }) => kind);

/** The kinds that drive current. */
export const sourceKinds: ReadonlySet<string> = new Set(
  [...byKind].flatMap(([name, kind]) => (kind.source === true ? [name] : [])),
);

/** What a kind of part can do.
 *  @throws RangeError if there is no such kind */
export function partKind(kind: string): PartKind<Part> {
  const found = byKind.get(kind);
  if (found === undefined) throw new RangeError(`partKind: there is no kind of part called "${kind}"`);
  return found;
}
