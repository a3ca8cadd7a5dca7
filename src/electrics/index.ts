/** Phasors, networks, the solver and path division; nothing of houses or people. */
export { abs, add, arg, complex, conj, div, mul, neg, phasor, phasors, polar, scale, sub } from './complex.ts';
export type { Complex, Phasors } from './complex.ts';
export { FloatingError } from './network.ts';
export type { Branch, Core, Network, Solution, Values, Winding } from './network.ts';
export { createSolver } from './solver.ts';
export type { Solver } from './solver.ts';
export { analyse } from './pattern.ts';
export { factor, refactorAndSolve, solve } from './factors.ts';
export { seenFrom } from './seenFrom.ts';
export { balance } from './balance.ts';
export { dividePaths, project } from './paths.ts';
export type { Path } from './paths.ts';
export { spiceNetlist } from './spice.ts';
