import { supplies } from '../oracle/supplies.ts';

const AT_ONCE = 50; // installations to one process of ngspice

/** Random installations over all supplies without end, fifty to a case, each solved by ngspice too. */
export function suppliesByNgspice(): {
  readonly cases: number;
  readonly wrong: (number: number) => readonly string[];
} {
  return {
    cases: Infinity,
    wrong(number) {
      try {
        return supplies(AT_ONCE, number).wrong;
      } catch (error) {
        return [`throws ${String(error)} among the supplies drawn with seed ${number}`];
      }
    },
  };
}
