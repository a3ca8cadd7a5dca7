import { ROOMS } from './.ci/rooms.js';

const severity = /** @type {const} */ ('error');
const rooms = Object.keys(ROOMS);
const either = (/** @type {readonly string[]} */ names) => names.map((name) => name.replaceAll('.', '\\.')).join('|');

const roomRules = Object.entries(ROOMS).map(([room, may]) => ({
  name: `room-${room}`,
  comment: `${room} may import ${['itself', ...may.rooms].join(', ')} and nothing else of src`,
  severity,
  from: { path: `^src/${room}/` },
  to: { path: '^src/', pathNot: `^src/(${either([room, ...may.rooms])})/` },
}));

const doorRules = rooms.map((room) => ({
  name: `door-${room}`,
  comment: `${room} is entered by its index only`,
  severity,
  from: { path: '^src/', pathNot: `^src/${room}/` },
  to: { path: `^src/${room}/`, pathNot: `^src/${room}/index\\.tsx?$` },
}));

const libraryRules = Object.entries(ROOMS).map(([room, { libraries }]) => ({
  name: `library-${room}`,
  comment: `${room} may use ${libraries.length ? libraries.join(', ') : 'no library'}`,
  severity,
  from: { path: `^src/${room}/` },
  to: {
    path: '(^|/)node_modules/',
    ...(libraries.length ? { pathNot: `(^|/)node_modules/(@types/)?(${either(libraries)})/` } : {}),
  },
}));

const withNode = rooms.filter((room) => ROOMS[room]?.libraries.includes('node'));

/** @type {import('dependency-cruiser').IConfiguration} */
const configuration = {
  forbidden: [
    ...roomRules,
    ...doorRules,
    ...libraryRules,
    {
      name: 'no-node',
      comment: `only ${withNode.join(', ')} may use node: modules`,
      severity,
      from: { path: '^src/', pathNot: `^src/(${either(withNode)})/` },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'root',
      comment: 'the root starts the app and imports its index only, besides react',
      severity,
      from: { path: '^src/[^/]+$' },
      to: { pathNot: '^src/app/index\\.tsx?$|\\.css$|(^|/)node_modules/(@types/)?react(-dom)?/' },
    },
    {
      name: 'no-stranger',
      comment: 'a folder of src that is not in the table of rooms',
      severity,
      from: {},
      to: { path: '^src/[^/]+/', pathNot: `^src/(${either(rooms)})/` },
    },
    { name: 'no-circle', severity, from: {}, to: { circular: true } },
    {
      name: 'no-orphan',
      comment: 'a file that nothing reaches and that reaches nothing',
      severity,
      from: { orphan: true, pathNot: '\\.d\\.ts$' },
      to: {},
    },
    { name: 'unresolvable', severity, from: {}, to: { couldNotResolve: true } },
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'default', 'types'] },
  },
};

export default configuration;
