import type { Diagnostic, WrittenDocument } from '../installation/index.ts';
import { nearest, setConditions } from '../installation/index.ts';
import type { Assertion, Claim } from './lesson.ts';
import type { LessonFile } from './lessonFile.ts';
import { branchesOf } from './measure.ts';
import type { LessonSurroundings } from './surroundings.ts';

type Path = readonly PropertyKey[];

/** Names in a lesson that its place does not have, files that are not in its folder, predictions without a run or without
 *  one right answer. */
export function lessonFaults(
  lesson: LessonFile,
  document: WrittenDocument,
  surroundings: LessonSurroundings,
): readonly Diagnostic[] {
  const names = namesOf(surroundings);
  const look: Lookup = { names, document, surroundings };
  return [
    ...(lesson.place === surroundings.place
      ? []
      : [
          document.diagnostic('unknown-name', ['place'], `there is no place "${lesson.place}"`, {
            instead: `place: ${surroundings.place}`,
          }),
        ]),
    ...conditionFaults(look, ['given'], lesson.given),
    ...lesson.steps.flatMap((step, index) => stepFaults(look, ['steps', index], step, lesson.steps[index + 1])),
    ...lesson.proves.flatMap((assertion, index) => claimFaults(look, ['proves', index], assertion)),
  ];
}

interface Names {
  readonly parts: readonly string[];
  readonly devices: readonly string[];
  readonly people: readonly string[];
  readonly branches: readonly string[];
  readonly terminals: readonly string[];
}

interface Lookup {
  readonly names: Names;
  readonly document: WrittenDocument;
  readonly surroundings: LessonSurroundings;
}

function namesOf({ build }: LessonSurroundings): Names {
  return {
    parts: Object.keys(build.installation.parts),
    devices: build.devices.map(({ name }) => name),
    people: build.people.map(({ name }) => name),
    branches: build.branches.map(({ name }) => name),
    terminals: build.network.nodes.slice(1),
  };
}

function stepFaults(
  look: Lookup,
  path: Path,
  step: LessonFile['steps'][number],
  next: LessonFile['steps'][number] | undefined,
) {
  const { document, names } = look;
  const { parts, devices } = names;
  const faults: Diagnostic[] = [...conditionFaults(look, [...path, 'given'], step.given)];
  if (step.look !== undefined) faults.push(...nameFault(look, [...path, 'look'], step.look, parts, 'part'));
  if (step.text !== undefined) faults.push(...fileFault(look, [...path, 'text'], step.text));
  if (step.kind === 'run')
    faults.push(...nameFault(look, [...path, 'watch'], step.watch, [...devices, ...parts], 'device or part'));
  if (step.kind === 'predict') {
    step.answers.forEach(({ claim }, index) =>
      faults.push(...claimFaults(look, [...path, 'answers', index, 'claim'], claim)),
    );
    const right = step.answers.filter((answer) => answer.right).length;
    if (right !== 1)
      faults.push(
        document.diagnostic('wrong-target', [...path, 'answers'], `has ${right} right answers; exactly one must be`, {
          of: 'key',
          instead: 'right: true, at one answer',
        }),
      );
    if (next?.kind !== 'run')
      faults.push(
        document.diagnostic(
          'wrong-target',
          [...path, 'kind'],
          'a prediction must be followed by the run that answers it',
          {
            instead: '- { kind: run, title: …, until_s: 60, watch: … } after it',
          },
        ),
      );
  }
  if (step.kind === 'make-safe') {
    step.goal.forEach((assertion, index) => faults.push(...claimFaults(look, [...path, 'goal', index], assertion)));
    step.repairs.forEach(({ change }, index) =>
      faults.push(...conditionFaults(look, [...path, 'repairs', index, 'change'], [change], false)),
    );
    if (!step.repairs.some((repair) => repair.right))
      faults.push(
        document.diagnostic('wrong-target', [...path, 'repairs'], 'has no repair that is right', {
          of: 'key',
          instead: 'right: true, at one repair or more',
        }),
      );
  }
  return faults;
}

function conditionFaults({ document, surroundings }: Lookup, path: Path, written: readonly string[], listed = true) {
  return written.flatMap((assignment, index) => {
    const setting = setConditions(surroundings.build.installation, [assignment]);
    if (setting.ok) return [];
    return setting.problems.map(({ message, instead }) =>
      document.diagnostic('unknown-name', listed ? [...path, index] : path, message, { instead }),
    );
  });
}

function claimFaults(look: Lookup, path: Path, { claim, with: changes }: Assertion): readonly Diagnostic[] {
  return [...subjectFaults(look, path, claim), ...conditionFaults(look, [...path, 'with'], changes)];
}

function subjectFaults(look: Lookup, path: Path, claim: Claim): readonly Diagnostic[] {
  const { names, surroundings } = look;
  switch (claim.kind) {
    case 'device':
      return nameFault(look, [...path, 'device'], claim.device, names.devices, 'device');
    case 'through':
      return branchesOf(surroundings.build, claim.through).length > 0
        ? []
        : nameFault(look, [...path, 'through'], claim.through, names.branches, 'branch or part with a current');
    case 'touching':
      return nameFault(look, [...path, 'touching'], claim.touching, names.terminals, 'terminal');
    case 'person':
      return nameFault(look, [...path, 'person'], claim.person, names.people, 'person');
    default:
      return claim satisfies never;
  }
}

function nameFault({ document }: Lookup, path: Path, written: string, known: readonly string[], what: string) {
  if (known.includes(written)) return [];
  const message = `the place has no ${what} called "${written.slice(0, 60)}"`;
  return [document.diagnostic('unknown-name', path, message, { instead: nearest(written, known) ?? known[0] })];
}

function fileFault({ document, surroundings }: Lookup, path: Path, written: string) {
  const files = Object.keys(surroundings.prose);
  if (files.includes(written)) return [];
  const message = `the lesson’s folder has no file "${written.slice(0, 60)}"`;
  return [
    document.diagnostic('unknown-name', path, message, {
      instead: nearest(written, files) ?? files[0] ?? 'a file that exists',
    }),
  ];
}
