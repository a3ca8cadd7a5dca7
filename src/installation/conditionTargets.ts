import type { Condition } from './conditions.ts';
import type { DocumentPath } from './documentPlaces.ts';
import { nearest } from './nearest.ts';
import type { Part } from './parts/index.ts';
import { pairKey, sameTerminal, type Survey } from './survey.ts';
import type { TerminalName } from './terminal.ts';

const RATED: readonly Part['kind'][] = ['breaker', 'rcbo', 'afci', 'adjustable-breaker', 'fuse'];
const WITH_RESIDUAL: readonly Part['kind'][] = ['residual-device', 'rcbo', 'afci'];
const OPENING: readonly Part['kind'][] = [...RATED, 'residual-device', 'device-by-points'];

const RUNNING: readonly Part['kind'][] = ['appliance', 'impedance', 'capacitance', 'harmonic-source'];

/** Says what is wrong with the things a condition acts on: places, devices, appliances, people, options. */
export function targetDiagnostics(name: string, condition: Condition, survey: Survey): void {
  const path: DocumentPath = ['conditions', name];
  if (condition.initially !== undefined) checkOption('initially', condition.initially, condition, path, survey);
  switch (condition.kind) {
    case 'insulation-fault':
      if (Object.hasOwn(condition.resistance_ohm, 'no'))
        survey.say('duplicate-name', [...path, 'resistance_ohm', 'no'], 'the option "no" is there already: no fault', {
          of: 'key',
          instead: 'another name',
        });
      return checkPair(condition.between, [...path, 'between'], survey);
    case 'link':
      return checkPair(condition.between, [...path, 'between'], survey);
    case 'open':
    case 'loose':
      if (condition.at !== undefined) checkConductor(condition.at, [...path, 'at'], survey);
      if (condition.between !== undefined) checkJoined(condition.between, [...path, 'between'], survey);
      return;
    case 'swap':
      return checkSwap(condition.ends, [...path, 'ends'], survey);
    case 'move': {
      const end = checkJoined([condition.end, condition.from], [...path, 'from'], survey, [...path, 'end']);
      const to = survey.find(condition.to, [...path, 'to']);
      sameTerminal(end, to, [...path, 'to'], survey.say);
      return;
    }
    case 'setting':
      if (condition.rating_A !== undefined) checkPart(condition.device, RATED, [...path, 'device'], survey);
      if (condition.residual_A !== undefined) checkResidual(condition.device, path, survey);
      return;
    case 'jammed':
      return checkPart(condition.device, OPENING, [...path, 'device'], survey);
    case 'fitted':
      return checkPart(condition.device, ['residual-device', 'insulation-monitor'], [...path, 'device'], survey);
    case 'running':
      return checkPart(condition.appliance, RUNNING, [...path, 'appliance'], survey);
    case 'transfer':
      return checkPart(condition.switch, ['transfer-switch'], [...path, 'switch'], survey);
    case 'touching': {
      checkPart(condition.person, ['person'], [...path, 'person'], survey);
      const person = survey.parts.get(condition.person);
      if (person?.kind !== 'person') return;
      for (const [option, limbs] of Object.entries(condition.limbs))
        for (const limb of limbs)
          if (person[limb] === undefined)
            survey.say(
              'wrong-target',
              [...path, 'limbs', option],
              `nothing is written for ${condition.person}'s ${limb}`,
              {
                instead: `${limb}: a terminal, in the part ${condition.person}`,
              },
            );
      return;
    }
    case 'footwear':
      checkPart(condition.person, ['person'], [...path, 'person'], survey);
      for (const option of Object.keys(condition.skin ?? {})) checkOption('skin', option, condition, path, survey);
      return;
    case 'gloves':
      checkPart(condition.person, ['person'], [...path, 'person'], survey);
      for (const option of Object.keys(condition.skin ?? {})) checkOption('skin', option, condition, path, survey);
      for (const option of Object.keys(condition.area ?? {})) checkOption('area', option, condition, path, survey);
      return;
    case 'mat':
      checkPart(condition.person, ['person'], [...path, 'person'], survey);
      return;
    default:
      condition satisfies never;
  }
}

function checkOption(key: string, option: string, condition: Condition, path: DocumentPath, survey: Survey): void {
  if (condition.options.includes(option)) return;
  const meant = nearest(option, condition.options) ?? condition.options[0] ?? '';
  survey.say('unknown-choice', [...path, key], `has no option "${option}"; it has ${condition.options.join(', ')}`, {
    instead: `${key}: ${meant}`,
  });
}

function checkPair([from, to]: readonly [TerminalName, TerminalName], path: DocumentPath, survey: Survey): void {
  sameTerminal(survey.find(from, [...path, 0]), survey.find(to, [...path, 1]), path, survey.say);
}

/** Checks that two terminals are joined; answers the index of the first. */
function checkJoined(
  [from, to]: readonly [TerminalName, TerminalName],
  path: DocumentPath,
  survey: Survey,
  first: DocumentPath = [...path, 0],
): number | undefined {
  const second = first.length > path.length ? [...path, 1] : path;
  const [a, b] = [survey.find(from, first), survey.find(to, second)];
  if (a === undefined || b === undefined || sameTerminal(a, b, path, survey.say)) return a;
  if (survey.joins.has(pairKey(a, b))) return a;
  const others = neighbours(a, survey);
  survey.say('wrong-target', path, `${from} and ${to} are not joined`, {
    instead: others.length === 0 ? `a join: - [${from}, ${to}]` : `[${from}, ${others[0] ?? ''}]`,
  });
  return a;
}

function checkSwap(ends: readonly [TerminalName, TerminalName], path: DocumentPath, survey: Survey): void {
  const found = ends.map((end, index) => survey.find(end, [...path, index]));
  if (sameTerminal(found[0], found[1], path, survey.say)) return;
  const landings = found.map((at, index) => {
    if (at === undefined) return undefined;
    const others = neighbours(at, survey);
    if (others.length === 1) return others[0];
    survey.say(
      'wrong-target',
      [...path, index],
      `${ends[index] ?? ''} is in ${others.length} joins; an end that is exchanged is in one`,
      {
        instead: 'the end of a conductor',
      },
    );
    return undefined;
  });
  if (landings[0] === undefined || landings[1] === undefined) return;
  const target = (index: 0 | 1): number => survey.terminals.indexOf(landings[index] ?? '');
  if (landings[0] === landings[1] || target(0) === found[1])
    survey.say('wrong-target', path, 'are joined to one terminal: there is nothing to exchange', {
      instead: 'two conductors that end on different terminals',
    });
}

function neighbours(at: number, survey: Survey): readonly TerminalName[] {
  return (survey.neighbours.get(at) ?? []).flatMap((other) => survey.terminals[other] ?? []);
}

/** A residual current can be set where the part says one; a class A device has its own, and not every afci has any. */
function checkResidual(device: string, path: DocumentPath, survey: Survey): void {
  checkPart(device, WITH_RESIDUAL, [...path, 'device'], survey);
  const part = survey.parts.get(device);
  const usual = survey.region === 'iec' ? 'iec61008' : 'ul943-class-a';
  const family =
    part?.kind === 'residual-device'
      ? (part.family ?? usual)
      : part?.kind === 'rcbo' && (part.residual_family ?? usual);
  if (family === 'ul943-class-a' || (part?.kind === 'afci' && part.residual_A === undefined))
    survey.say('wrong-target', [...path, 'residual_A'], `${device} has no residual current that could be set`, {
      of: 'key',
      instead: 'a device with residual_A',
    });
}

function checkPart(name: string, kinds: readonly Part['kind'][], path: DocumentPath, survey: Survey): void {
  if (survey.broken.has(name)) return;
  const part = survey.parts.get(name);
  if (part !== undefined && kinds.includes(part.kind)) return;
  const fitting = [...survey.parts].flatMap(([other, { kind }]) => (kinds.includes(kind) ? [other] : []));
  const instead = nearest(name, fitting) ?? fitting[0] ?? `a part of kind ${kinds.join(' or ')}`;
  if (part === undefined) survey.say('unknown-name', path, `there is no part "${name}"`, { instead });
  else survey.say('wrong-target', path, `${name} is of kind ${part.kind}, not ${kinds.join(' or ')}`, { instead });
}

function checkConductor(at: string, path: DocumentPath, { broken, conductors, say }: Survey): void {
  const part = at.split('.', 1)[0] ?? at;
  if (broken.has(part) || conductors.has(at)) return;
  const own = [...conductors].filter((name) => name.startsWith(`${part}.`));
  const instead = nearest(at, conductors) ?? own[0] ?? 'a conductor, such as mixer run.protective';
  say('unknown-name', path, `there is no conductor "${at.slice(0, 80)}"`, { instead });
}
