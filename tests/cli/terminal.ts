import { readdirSync, readFileSync } from 'node:fs';
import { ohmward } from '../../src/cli/ohmward.ts';

/** What a command printed and how it ended. */
export interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the program in this process, on the real files and the ones given instead. */
export function terminal(args: readonly string[], files: Readonly<Record<string, string>> = {}, columns = 100): Ended {
  let out = '';
  let err = '';
  const folder = (file: string) => file.slice(0, file.lastIndexOf('/'));
  const code = ohmward(args, {
    read: (file) => files[file] ?? readFileSync(file, 'utf8'),
    list: (name) => {
      const given = Object.keys(files).filter((file) => folder(file) === name);
      return given.length > 0 ? given.map((file) => file.slice(name.length + 1)) : readdirSync(name);
    },
    print: (text) => (out += `${text}\n`),
    complain: (text) => (err += `${text}\n`),
    columns,
  });
  return { code, out, err };
}

/** The bakery's file. */
export const BAKERY = 'lessons/places/bakery.yaml';

/** Arguments that set conditions. */
export function set(...assignments: readonly string[]): readonly string[] {
  return assignments.flatMap((assignment) => ['--set', assignment]);
}
