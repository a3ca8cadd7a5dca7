/** Says by name what a drawn place still lacks: `node .ci/drawingCheck.mjs pump`, or all of them without a name. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { runnerImport } from 'vite';
import { drawnPlaceNames, readDrawnPlace, svgsIn } from './drawnPlaces.mjs';

const TOP = fileURLToPath(new URL('..', import.meta.url));
const SCENE_LAYERS = ['ribbons', 'people', 'body ribbons', 'over'];

/** @typedef {import('../src/depiction/index.ts').DrawnPlace} DrawnPlace */
/** @typedef {import('../src/installation/index.ts').Build} Build */

/**
 * Everything that is missing or left over between a drawing and the installation it shows, a sentence each.
 * @param {DrawnPlace} place
 * @param {Build} build
 * @returns {readonly string[]}
 */
export function missingIn({ layout, routes, wiring }, build) {
  const branches = new Map(build.branches.map(({ name, role }) => [name, role]));
  const { parts, conditions } = build.installation;
  const shown = new Set(wiring.pieces.flatMap((piece) => piece.of ?? [piece.id]));
  const undrawn = new Set(wiring.undrawn ?? []);
  const unmarked = new Set(layout.unmarked ?? []);
  const named = new Set(wiring.pieces.flatMap((piece) => piece.routes ?? [piece.route ?? piece.id]));
  const told = [
    ...Object.values(wiring.offers),
    ...Object.values(wiring.appears),
    ...Object.values(wiring.overlays).flatMap((defects) => Object.values(defects)),
    ...Object.values(routes.variants).flatMap((changed) => Object.keys(changed)),
    ...wiring.pieces.flatMap(({ absent = [], present = [], breaks = {}, loosens = {} }) => [
      ...absent,
      ...present,
      ...Object.keys(breaks),
      ...Object.keys(loosens),
    ]),
  ];
  const options = new Set([...Object.keys(conditions), ...Object.values(conditions).flatMap((one) => one.options)]);
  return [
    ...svgsIn({ layout, wiring })
      .filter((file) => !existsSync(join(TOP, 'assets', file)))
      .map((file) => `draw assets/${file}`),
    ...SCENE_LAYERS.filter((group) => !layout.groups.includes(group)).map(
      (group) => `layout: add the group "${group}"`,
    ),
    ...layout.parts
      .filter(({ group }) => !layout.groups.includes(group))
      .map(({ id, group }) => `layout: ${id} stands in "${group}", which is not among the groups`),
    ...layout.parts
      .filter(({ when }) => when !== undefined && !options.has(when))
      .map(({ id, when }) => `layout: ${id} waits for "${when}", which is no condition and no option`),
    ...Object.keys(parts)
      .filter((part) => !unmarked.has(part) && !(part in layout.labels && part in layout.targets))
      .map((part) => `layout: ${part} needs a label and a target, or a line in "unmarked"`),
    ...[...Object.keys(layout.labels), ...Object.keys(wiring.offers)]
      .filter((part) => !(part in parts) && !layout.parts.some(({ id }) => id === part))
      .map((part) => `${part} is named, but is neither a part of the place nor a drawing`),
    ...wiring.pieces.flatMap(({ id, of = [id] }) =>
      of.filter((name) => !branches.has(name)).map((name) => `wiring: ${id} carries "${name}", which is no branch`),
    ),
    ...[...branches]
      .filter(
        ([name, role]) => role !== 'insulation' && !name.includes(' – ') && !shown.has(name) && !undrawn.has(name),
      )
      .map(([name]) => `wiring: draw the branch "${name}", or name it in "undrawn"`),
    ...Object.keys(routes.routes)
      .filter((key) => !named.has(key))
      .map((key) => `routes: no piece of wiring uses "${key}"`),
    ...Object.entries(routes.poses).flatMap(([pose, limbs]) =>
      wiring.pieces
        .filter((piece) => piece.posed === true && !(piece.id in limbs))
        .map(({ id }) => `routes: the pose "${pose}" has no way for ${id}`),
    ),
    ...[...new Set(told)]
      .filter((name) => !(name in conditions))
      .map((name) => `"${name}" is no condition of the place`),
  ];
}

/**
 * Place files that say they are drawn, by the name of the drawing.
 * @returns {ReadonlyMap<string, string>}
 */
export function placesDrawn() {
  const folder = join(TOP, 'lessons/places');
  return new Map(
    readdirSync(folder).flatMap((file) => {
      const text = readFileSync(join(folder, file), 'utf8');
      const drawing = /^drawing: (.+)$/m.exec(text)?.[1];
      return drawing === undefined ? [] : [[drawing, text]];
    }),
  );
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  /** @type {{ module: typeof import('../src/installation/index.ts') }} */
  const { module } = await runnerImport(join(TOP, 'src/installation/index.ts'), {
    root: TOP,
    configFile: false,
    logLevel: 'error',
  });
  const wanted = process.argv.slice(2);
  for (const name of wanted.length > 0 ? wanted : drawnPlaceNames()) {
    const file = join(TOP, `lessons/places/${name}.yaml`);
    const reading = module.readInstallation(readFileSync(file, 'utf8'), file);
    if (!reading.ok) throw new Error(`${file} cannot be read: npm run -s ohmward -- check ${file}`);
    const missing = missingIn(readDrawnPlace(name), module.compile(reading.installation));
    console.log(missing.length === 0 ? `${name}: nothing is missing` : [`${name}:`, ...missing].join('\n  '));
    if (missing.length > 0) process.exitCode = 1;
  }
}
