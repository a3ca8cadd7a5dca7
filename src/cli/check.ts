import { claimText, isLesson, placeNamed, prove, readLesson, type Proof } from '../lesson/index.ts';
import { compile, printDiagnostics, readInstallation, type Build, type Diagnostic } from '../installation/index.ts';
import { readNamed, WrongUse, type ExitCode, type World } from './world.ts';

/** Checks files one by one: an installation for what is written in it, a lesson also for what it teaches.
 *  A folder stands for the YAML files in it. What cannot be read is told, and the rest is checked all the same. */
export function check(world: World, named: readonly string[]): ExitCode {
  const codes = named.flatMap((name): readonly ExitCode[] => {
    const files = readable(world, () => filesIn(world, name));
    return files === undefined ? [2] : files.map((file) => checkFile(world, file));
  });
  return codes.includes(2) ? 2 : codes.includes(1) ? 1 : 0;
}

function checkFile(world: World, file: string): ExitCode {
  const good = readable(world, () => {
    const text = readNamed(world, file);
    return isLesson(text) ? checkLesson(world, file, text) : checkInstallation(world, file, text) !== undefined;
  });
  return good === undefined ? 2 : good ? 0 : 1;
}

/** What was made of a file; undefined, and told, if it or one it needs cannot be read. */
function readable<T>(world: World, make: () => T): T | undefined {
  try {
    return make();
  } catch (error) {
    if (!(error instanceof WrongUse)) throw error;
    world.complain(`ohmward: ${error.message}`);
    return undefined;
  }
}

function filesIn(world: World, name: string): readonly string[] {
  const folder = name.replace(/\/+$/, '');
  const names = inside(world, folder);
  if (names === undefined) return [name];
  const files = names.filter((file) => /\.ya?ml$/.test(file)).toSorted();
  if (files.length === 0) throw new WrongUse(`${name} is a folder without a .yaml file`);
  return files.map((file) => `${folder}/${file}`);
}

/** Names in a folder; undefined if it is none. */
function inside(world: World, folder: string): readonly string[] | undefined {
  try {
    return world.list(folder);
  } catch {
    return undefined;
  }
}

const LINES = { 1: 'one line', 2: 'two lines', 3: 'three lines' } as const;

function checkInstallation(world: World, file: string, text: string): Build | undefined {
  const reading = readInstallation(text, file);
  if (!reading.ok) {
    world.complain(printDiagnostics(reading.diagnostics, text));
    return undefined;
  }
  const { installation } = reading;
  const build = compile(installation);
  const conditions = Object.keys(installation.conditions).length;
  world.print(
    `${file}: ${installation.place}, ${Object.keys(installation.parts).length} parts, ${conditions} conditions: fine`,
  );
  for (const { part, phases, system, nominal_V } of build.supplies)
    world.print(`  ${part}: ${LINES[phases]}, ${system}, ${Math.round(nominal_V)} V to earth or neutral`);
  for (const piece of build.unreached) world.print(`  no conductor joins this to a source: ${piece.join(', ')}`);
  for (const terminal of build.unearthed)
    world.print(
      `  warning: nothing joins this source to earth, so volts to earth mean little; write in joins: [${terminal}, earth]`,
    );
  return build;
}

function checkLesson(world: World, file: string, text: string): boolean {
  const folder = file.includes('/') ? file.slice(0, file.lastIndexOf('/')) : '.';
  const place = placeNamed(text) ?? '';
  const placeFile = `${folder}/../places/${place}.yaml`;
  const build = placeAt(world, placeFile);
  if (build === undefined) {
    world.complain(
      `${file}: its place is read from ${placeFile}, which is wrong or is not there\n   write instead: place: bakery`,
    );
    return false;
  }
  const names = world.list(folder).filter((name) => name.endsWith('.md'));
  const prose = Object.fromEntries(names.map((name) => [name, readNamed(world, `${folder}/${name}`)]));
  const id = folder.slice(folder.lastIndexOf('/') + 1);
  const reading = readLesson(text, file, { id, place, build, prose });
  if (!reading.ok) {
    const texts = {
      [file]: text,
      ...Object.fromEntries(names.map((name) => [`${folder}/${name}`, prose[name] ?? ''])),
    };
    world.complain(byFile(reading.diagnostics, texts));
    return false;
  }
  const proofs = prove(reading.lesson, build);
  const wrong = proofs.filter(({ holds }) => !holds);
  world.print(`${file}: ${reading.lesson.title}: ${proofs.length - wrong.length} of ${proofs.length} claims proven`);
  for (const proof of wrong) world.complain(refuted(file, proof));
  return wrong.length === 0;
}

function placeAt(world: World, file: string): Build | undefined {
  try {
    const reading = readInstallation(world.read(file), file);
    return reading.ok ? compile(reading.installation) : undefined;
  } catch {
    return undefined;
  }
}

function refuted(file: string, { at, assertion, expected, value }: Proof): string {
  const claim = claimText(assertion, 'north-america');
  return `${file}: ${at}: not proven: ${claim}: ${expected ? 'must hold' : 'must not hold'}, the solver finds ${value}`;
}

function byFile(diagnostics: readonly Diagnostic[], texts: Readonly<Record<string, string>>): string {
  const files = [...new Set(diagnostics.map(({ file }) => file))];
  return files
    .map((file) =>
      printDiagnostics(
        diagnostics.filter((one) => one.file === file),
        texts[file] ?? '',
      ),
    )
    .join('\n\n');
}
