import { terminal } from '../cli/terminal.ts';

/** A textbook circuit typed into a file and answered by `ohmward run`. */
export interface Typed {
  /** A r.m.s., harmonics included, once the fault has struck. */
  amperes(branch: string): number;
  /** V r.m.s. from one terminal to another, or to earth. */
  volts(one: string, other?: string): number;
  /** What is printed for people, as one line. */
  readonly text: string;
}

interface Phasor {
  readonly name: string;
  readonly degrees: number;
}

interface Answer {
  readonly intervals: readonly {
    readonly branches: readonly (Phasor & { readonly amperes: number })[];
    readonly nodes: readonly (Phasor & { readonly volts: number })[];
    readonly harmonics?: readonly { readonly branches: readonly (Phasor & { readonly amperes: number })[] }[];
  }[];
}

const answered = new Map<string, Typed>();

/** The answer to a file in `textbook/`, asked once. */
export function typed(name: string, ...set: readonly string[]): Typed {
  const key = [name, ...set].join(' ');
  const known = answered.get(key) ?? ask(`tests/reference/textbook/${name}.yaml`, set);
  answered.set(key, known);
  return known;
}

function ask(file: string, set: readonly string[]): Typed {
  const conditions = set.flatMap((one) => ['--set', one]);
  const { code, out, err } = terminal(['run', file, ...conditions, '--json']);
  if (code !== 0) throw new Error(err);
  const answer: Answer = JSON.parse(out);
  const last = answer.intervals.at(-1);
  if (last === undefined) throw new Error(`${file}: nothing was answered`);
  const branchIn = (all: readonly (Phasor & { readonly amperes: number })[], name: string): number => {
    const found = all.find((branch) => branch.name === name);
    if (found === undefined) throw new Error(`${file} has no ${name}`);
    return found.amperes;
  };
  const volts = (name: string) => {
    const found = last.nodes.find((node) => node.name === name);
    if (found === undefined) throw new Error(`${file} has no ${name}`);
    const angle = (found.degrees * Math.PI) / 180;
    return { re: found.volts * Math.cos(angle), im: found.volts * Math.sin(angle) };
  };
  return {
    amperes: (name) =>
      Math.hypot(
        branchIn(last.branches, name),
        ...(last.harmonics ?? []).map(({ branches }) => branchIn(branches, name)),
      ),
    volts: (one, other = 'earth') => {
      const [a, b] = [volts(one), volts(other)];
      return Math.hypot(a.re - b.re, a.im - b.im);
    },
    text: terminal(['run', file, ...conditions]).out.replace(/\s+/gu, ' '),
  };
}
