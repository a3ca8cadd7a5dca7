import type { z } from 'zod';
import { anybody, crowdTouches, exposedMetal, figure, label, quantity, type Vocabulary } from '../explain/index.ts';
import { openNamed } from './open.ts';
import type { populationSchema } from './populationSchema.ts';
import { table } from './table.ts';
import { WrongUse, type ExitCode, type World } from './world.ts';

/** What `ohmward population` was asked. */
export interface PopulationRequest {
  readonly file: string;
  readonly set: readonly string[];
  readonly json: boolean;
  readonly vocabulary: Vocabulary | undefined;
  readonly people: number;
  readonly seed: number;
}

/** Lets many different people touch the metal that a fault makes live, and prints how many come to which zone. */
export function populationFile(world: World, request: PopulationRequest): ExitCode {
  const { file, set, json, people, seed } = request;
  const opened = openNamed(world, file, set);
  if (opened === undefined) return 1;
  const { build, conditions } = opened;
  const exposed = exposedMetal(build, conditions);
  if (exposed === undefined)
    throw new WrongUse(
      'nothing strikes here, so nobody is exposed: set a fault, such as --set "line touches the case"',
    );
  const who = anybody(exposed);
  const outcome = [...crowdTouches(exposed.source, who, people, seed)].at(-1);
  if (outcome === undefined) return 1;
  if (json) {
    const { place, region } = build.installation;
    const all: z.input<typeof populationSchema> = {
      ohmward: 1,
      file,
      place,
      region,
      conditions,
      seed,
      exposed,
      who,
      outcome,
    };
    world.print(JSON.stringify(all, null, 2));
    return 0;
  }
  const words = request.vocabulary ?? build.installation.region;
  const percent = (share: number): string => `${figure(share * 100)} %`;
  const ends =
    exposed.ends_s < Infinity ? `until it ends after ${quantity(exposed.ends_s, 's')}` : 'and nothing ends it';
  world.print(
    [
      build.installation.place,
      `  ${label(exposed.part, words)}: ${quantity(exposed.source.volts, 'V')} to remote earth, ${ends}.`,
      `  ${outcome.people} people touch it: hands, skin, shoes, floor and time as they come (invented shares, typical data).`,
      '',
      ...table(
        [
          ['zone of IEC 60479-1', 'share'],
          ...outcome.zones.map(({ zone, share }) => [zone, percent(share)]),
          ['could not let go by the long limit', percent(outcome.held)],
        ],
        world.columns,
      ),
      '',
      ...table(
        [
          ['this share stays below', 'body current'],
          ...outcome.quantiles.map(({ share, amperes }) => [percent(share), quantity(amperes, 'A')]),
        ],
        world.columns,
      ),
      '',
      'A teaching model: no figure here says that a touch is safe.',
    ].join('\n'),
  );
  return 0;
}
