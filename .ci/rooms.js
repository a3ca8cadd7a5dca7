/**
 * The rooms of `src/`: which other rooms each may import, and which libraries. `node` stands for every `node:` module.
 * The layer rules, the test that plants every arrow, and the linter's list of pure rooms are checked against this table.
 */

const upToBody = ['electrics', 'earth', 'protection', 'body'];
const upToInstallation = [...upToBody, 'installation'];
const upToScenario = [...upToInstallation, 'scenario'];
const upToExplain = [...upToScenario, 'explain'];
const upToLesson = [...upToExplain, 'lesson'];

/**
 * Rooms that use no DOM, no Node module, no clock and no unseeded chance.
 * @type {readonly string[]}
 */
export const PURE = [...upToLesson, 'depiction'];

/** @typedef {{ readonly rooms: readonly string[], readonly libraries: readonly string[] }} Room */

/**
 * Everything not listed is forbidden.
 * @type {Readonly<Record<string, Room>>}
 */
export const ROOMS = {
  electrics: { rooms: [], libraries: [] },
  earth: { rooms: [], libraries: [] },
  protection: { rooms: ['electrics'], libraries: [] },
  body: { rooms: ['electrics'], libraries: [] },
  installation: { rooms: upToBody, libraries: ['zod', 'yaml'] },
  scenario: { rooms: upToInstallation, libraries: ['xstate'] },
  explain: { rooms: upToScenario, libraries: ['intl-messageformat'] },
  lesson: { rooms: upToExplain, libraries: ['xstate', 'zod', 'yaml'] },
  records: { rooms: ['lesson'], libraries: ['idb', 'zod'] },
  depiction: { rooms: upToExplain, libraries: [] },
  scene: { rooms: ['depiction'], libraries: ['pixi.js'] },
  charts: {
    rooms: ['depiction', 'protection', 'body'],
    libraries: ['d3-scale', 'd3-shape', 'elkjs', 'react', 'react-dom'],
  },
  sound: { rooms: ['depiction'], libraries: ['howler'] },
  app: {
    rooms: [...PURE, 'records', 'scene', 'charts', 'sound'],
    libraries: ['react', 'react-dom', 'xstate'],
  },
  cli: { rooms: PURE, libraries: ['node', 'zod'] },
};
