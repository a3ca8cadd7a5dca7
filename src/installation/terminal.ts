/** `<part>.<terminal>`, a cable's cores `<part>.<core>.supply` and `.load`, or `earth` for remote earth.
 *  A part with one terminal may be named alone: `sink` is `sink.metal`. */
export type TerminalName = string;

/** Remote earth: node 0, reserved as a name. */
export const EARTH = 'earth';

/** The part a terminal belongs to. */
export function partOf(terminal: TerminalName): string {
  return terminal.split('.', 1)[0] ?? terminal;
}
