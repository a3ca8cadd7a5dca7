import { drawn, installationsByNgspice, wrongByMathjs } from '../oracle/installations.ts';
import { runInstallation } from '../oracle/runInstallation.ts';
import { tellInstallation } from '../oracle/tellInstallation.ts';

const AT_ONCE = 50; // installations to one process of ngspice

interface Campaign {
  readonly cases: number;
  readonly wrong: (number: number) => readonly string[];
}

/** Random installations without end, each read, compiled and run anew. */
export function installations(): Campaign {
  return { cases: Infinity, wrong: (number) => runInstallation(number).wrong };
}

/** All that can be said, judged and repaired of them. */
export function tellings(): Campaign {
  return { cases: Infinity, wrong: tellInstallation };
}

/** The same solved by ngspice and mathjs too, fifty to a case. */
export function installationsByOthers(): Campaign {
  return {
    cases: Infinity,
    wrong(number) {
      try {
        const solved = drawn(number * AT_ONCE, AT_ONCE);
        return [...installationsByNgspice(solved).wrong, ...solved.flatMap(wrongByMathjs)];
      } catch (error) {
        return [`throws ${String(error)} among the installations from ${number * AT_ONCE}`];
      }
    },
  };
}
