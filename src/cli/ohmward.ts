import { parseArgs } from 'node:util';
import type { Axis, Vocabulary } from '../explain/index.ts';
import { check } from './check.ts';
import { HELP } from './help.ts';
import { repairsFile } from './repairsFile.ts';
import { populationFile } from './populationFile.ts';
import { runFile } from './runFile.ts';
import { DESCRIBED, schemaOf } from './schemas.ts';
import { SHOWN, sweepFile } from './sweepFile.ts';
import { verdictsFile } from './verdictsFile.ts';
import { type ExitCode, WrongUse, type World } from './world.ts';

/** The program: reads its arguments, does what they say, and answers with an exit code. */
export function ohmward(args: readonly string[], world: World): ExitCode {
  try {
    return dispatch(args, world);
  } catch (error) {
    // The engine says what is wrong and where; a trace of the program tells nobody more.
    if (error instanceof RangeError) {
      world.complain(`error: ${error.message}`);
      return 1;
    }
    if (!(error instanceof WrongUse)) throw error;
    world.complain(`ohmward: ${error.message}\nTry: ohmward --help`);
    return 2;
  }
}

const OPTIONS = {
  help: { type: 'boolean', short: 'h' },
  json: { type: 'boolean' },
  set: { type: 'string', multiple: true },
  vocabulary: { type: 'string' },
  tolerance: { type: 'string' },
  until: { type: 'string' },
  value: { type: 'string', multiple: true },
  from: { type: 'string', multiple: true },
  to: { type: 'string', multiple: true },
  steps: { type: 'string', multiple: true },
  show: { type: 'string' },
  people: { type: 'string' },
  seed: { type: 'string' },
} as const;

/** Which options a command takes; one that is not here takes none. */
const OPTIONS_OF: Readonly<Record<string, readonly string[]>> = {
  run: ['json', 'set', 'vocabulary', 'tolerance', 'until'],
  verdicts: ['json', 'set', 'vocabulary'],
  repairs: ['json', 'set', 'vocabulary'],
  sweep: ['json', 'set', 'value', 'from', 'to', 'steps', 'show'],
  population: ['json', 'set', 'vocabulary', 'people', 'seed'],
};

function dispatch(args: readonly string[], world: World): ExitCode {
  const { values, positionals } = parsed(args);
  const [command, ...rest] = positionals;
  if (values.help === true || (command === undefined && args.length === 0)) {
    world.print(HELP);
    return 0;
  }
  const { set = [], json = false, vocabulary, tolerance, until } = values;
  const own = OPTIONS_OF[command ?? ''] ?? [];
  const foreign = Object.keys(values).find((option) => !own.includes(option));
  if (foreign !== undefined) {
    const owners = Object.keys(OPTIONS_OF).filter((name) => OPTIONS_OF[name]?.includes(foreign));
    throw new WrongUse(`--${foreign} belongs to: ${owners.map((name) => `ohmward ${name} FILE`).join(', ')}`);
  }
  const file = (): string => {
    const [named, ...more] = rest;
    if (named === undefined || more.length > 0)
      throw new WrongUse(`${command ?? ''} needs exactly one file, not ${rest.length}`);
    return named;
  };
  const words =
    vocabulary === undefined ? undefined : oneOf<Vocabulary>('vocabulary', vocabulary, ['north-america', 'iec']);
  switch (command) {
    case 'run':
      return runFile(world, {
        file: file(),
        set,
        json,
        vocabulary: words,
        tolerance: oneOf('tolerance', tolerance ?? 'middle', ['fast', 'middle', 'slow']),
        until_s: until === undefined ? undefined : seconds(until),
      });
    case 'verdicts':
      return verdictsFile(world, { file: file(), set, json, vocabulary: words });
    case 'repairs':
      return repairsFile(world, { file: file(), set, json, vocabulary: words });
    case 'sweep':
      return sweepFile(world, {
        file: file(),
        set,
        json,
        axes: axesOf(values),
        show: oneOf('show', values.show ?? 'opens', SHOWN),
      });
    case 'population':
      return populationFile(world, {
        file: file(),
        set,
        json,
        vocabulary: words,
        people: whole('people', values.people ?? '100000', 1, 100_000_000),
        seed: whole('seed', values.seed ?? '1', 0, 2 ** 31 - 1),
      });
    case 'check':
      if (rest.length === 0) throw new WrongUse('check needs at least one file');
      return check(world, rest);
    case 'schema':
      if (rest.length > 1) throw new WrongUse(`schema prints one of ${DESCRIBED.join(', ')}`);
      world.print(JSON.stringify(schemaOf(oneOf('schema', rest[0] ?? 'installation', DESCRIBED)), null, 2));
      return 0;
    default:
      throw new WrongUse(command === undefined ? 'what is to be done?' : `there is no command "${command}"`);
  }
}

function parsed(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true, strict: true });
  } catch (error) {
    throw new WrongUse(error instanceof Error ? error.message : String(error));
  }
}

function oneOf<T extends string>(what: string, written: string, known: readonly T[]): T {
  const found = known.find((candidate) => candidate === written);
  if (found === undefined) throw new WrongUse(`${what} is one of ${known.join(', ')}, not "${written}"`);
  return found;
}

function seconds(written: string): number {
  const value = Number(written);
  if (written.trim() === '' || !(value > 0 && value < Infinity))
    throw new WrongUse(`--until needs seconds above zero, such as 600, not "${written}"`);
  return value;
}

/** The axes of a sweep: each `--value` with its own `--from`, `--to` and `--steps`. */
function axesOf(values: {
  readonly value?: readonly string[] | undefined;
  readonly from?: readonly string[] | undefined;
  readonly to?: readonly string[] | undefined;
  readonly steps?: readonly string[] | undefined;
}): readonly Axis[] {
  const paths = values.value ?? [];
  if (paths.length < 1 || paths.length > 2)
    throw new WrongUse('sweep needs one --value, or two for a map, such as --value "mixer run.length_m"');
  return paths.map((path, axis) => {
    const [from, to] = [values.from?.[axis], values.to?.[axis]];
    if (from === undefined || to === undefined) throw new WrongUse(`--value "${path}" needs its own --from and --to`);
    return {
      path,
      from: number('from', from),
      to: number('to', to),
      steps: whole('steps', values.steps?.[axis] ?? '11', 1, 10_000),
    };
  });
}

function number(option: string, written: string): number {
  const value = Number(written);
  if (written.trim() === '' || !Number.isFinite(value))
    throw new WrongUse(`--${option} needs a number, not "${written}"`);
  return value;
}

function whole(option: string, written: string, least: number, most: number): number {
  const value = number(option, written);
  if (!Number.isInteger(value) || value < least || value > most)
    throw new WrongUse(`--${option} needs a whole number from ${least} to ${most}, not "${written}"`);
  return value;
}
