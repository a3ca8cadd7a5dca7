import { partKind, type Part } from './parts/index.ts';
import { EARTH, type TerminalName } from './terminal.ts';

/** Every terminal there is, in the order of the file, by its full name; `earth` first. */
export function terminalsOf(parts: Iterable<readonly [string, Part]>): readonly TerminalName[] {
  const own = [...parts].flatMap(([name, part]) =>
    partKind(part.kind)
      .terminals(part)
      .map((terminal) => `${name}.${terminal}`),
  );
  return [EARTH, ...own];
}

/** The index of a terminal by any name it may be called; undefined if nothing is called so. */
export function terminalFinder(terminals: readonly TerminalName[]): (name: TerminalName) => number | undefined {
  const index = new Map(terminals.map((terminal, at) => [terminal, at]));
  const alone = new Map<string, number | undefined>();
  terminals.forEach((terminal, at) => {
    const part = terminal.split('.', 1)[0] ?? terminal;
    if (!index.has(part)) alone.set(part, alone.has(part) ? undefined : at);
  });
  return (name) => index.get(name) ?? alone.get(name);
}
