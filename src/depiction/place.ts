import type { Role } from '../installation/index.ts';
import type { Box, Conductor, Point } from './depiction.ts';
import { cut, points, type Pairs } from './route.ts';

/** What the person in the picture can look like, and what stands in for a pose that a place has not drawn. */
const POSES = {
  away: 'away',
  hand: 'away',
  both: 'hand',
  startle: 'away',
  held: 'hand',
  'held both': 'both',
  fallen: 'startle',
} as const;

/** What the person in the picture can look like. */
export type PoseName = keyof typeof POSES;

/** A stretch of the drawing that current runs along, and what of the network it carries. */
export interface Stretch {
  readonly id: string;
  readonly part: string | undefined;
  /** From its first to its last point in the direction in which the branches count. */
  readonly route: readonly Point[];
  /** Names of branches; their sum flows here. */
  readonly of: readonly string[];
  /** Part of the sum that takes this way, where two ways share it. */
  readonly share: number;
  readonly role: Role | undefined;
  readonly wire: Conductor['insulation'] | undefined;
  readonly width: number;
  /** True where nothing but sky lies under it, so that it needs no casing. */
  readonly bare: boolean;
  /** It leads only to an electrode or a pipe. */
  readonly earthing: boolean;
  /** It ends in the soil, where all ways through soil meet. */
  readonly earthed: boolean;
  /** Conditions that take it away, or without which it is not there. */
  readonly absent: readonly string[];
  readonly present: readonly string[];
  readonly breaks: Readonly<Record<string, Point>>;
  readonly loosens: Readonly<Record<string, Point>>;
}

type File = string;

/** A drawing as it stands in the layout. */
export interface Standing {
  readonly id: string;
  readonly file: File;
  readonly x: number;
  readonly y: number;
  readonly group: string;
  readonly when?: string;
  readonly overlays?: Readonly<Record<string, File>>;
  readonly poses?: Readonly<
    Record<string, File | { readonly file: File; readonly x: number; readonly y: number; readonly feet: string }>
  >;
  readonly feet?: Readonly<Record<string, Readonly<Record<string, File>>>>;
}

/** A drawn place. */
export interface Place {
  readonly world: { readonly width: number; readonly height: number };
  readonly groups: readonly string[];
  readonly parallax: Readonly<Record<string, number>>;
  /** From back to front. */
  readonly standing: readonly Standing[];
  readonly plates: Readonly<Record<string, Point>>;
  /** 1: its name fits on a desk, 2: when the camera is nearer, 3: only when it is selected. */
  readonly ranks: Readonly<Record<string, number>>;
  readonly targets: Readonly<Record<string, Box>>;
  readonly frames: Readonly<Record<string, Box>>;
  readonly spark: Point;
  /** Depth of the line at which all ways through soil meet. */
  readonly meeting_y: number;
  readonly stretches: Readonly<Record<PoseName, readonly Stretch[]>>;
  /** Condition offered where a part is pressed. */
  readonly offers: Readonly<Record<string, string>>;
  /** Drawing → defect → condition that shows it. */
  readonly overlays: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** Drawing → condition without which it is not there. */
  readonly appears: Readonly<Record<string, string>>;
  /** Drawing → appliance by which it glows, with its drawings; `glare` lies over them above its rated volts. */
  readonly lit: Readonly<
    Record<string, { readonly by: string; readonly dark: File; readonly lit: File; readonly glare?: File }>
  >;
  /** Part → drawings that are its metal, where they are more than the one of its name. */
  readonly metal: Readonly<Record<string, readonly string[]>>;
  /** Drawing → appliance that turns it. */
  readonly turns: Readonly<Record<string, string>>;
}

type Wiring = Pick<Place, 'offers' | 'overlays' | 'appears' | 'lit' | 'turns' | 'metal'> & {
  readonly pieces: readonly Piece[];
  /** Branches that lie within something drawn and need no way of their own. */
  readonly undrawn?: readonly string[];
};

interface Piece {
  readonly id: string;
  /** Key of the route; the id where it is not given. */
  readonly route?: string;
  readonly routes?: readonly string[];
  /** Condition whose variant of the route is meant. */
  readonly variant?: string;
  readonly points?: Pairs;
  /** Its route changes with the person's pose. */
  readonly posed?: boolean;
  readonly since?: readonly number[];
  readonly until?: readonly number[];
  readonly reversed?: boolean;
  /** Branches whose sum it carries; the one of its id where they are not given. */
  readonly of?: readonly string[];
  readonly part?: string;
  readonly share?: number;
  readonly role?: string;
  readonly wire?: string;
  readonly width?: number;
  readonly bare?: boolean;
  readonly earthing?: boolean;
  readonly earthed?: boolean;
  readonly absent?: readonly string[];
  readonly present?: readonly string[];
  readonly breaks?: Readonly<Record<string, readonly number[]>>;
  readonly loosens?: Readonly<Record<string, readonly number[]>>;
}

type Routes = Readonly<Record<string, Pairs>>;

interface RouteFile {
  readonly meeting: { readonly y: number };
  readonly routes: Routes;
  /** Route → condition → how it runs then. */
  readonly variants: Readonly<Record<string, Routes>>;
  readonly poses: Readonly<Record<string, Routes>>;
}

interface Layout {
  readonly world: Place['world'];
  readonly groups: readonly string[];
  readonly parallax: Readonly<Record<string, number>>;
  readonly parts: readonly Standing[];
  readonly labels: Readonly<Record<string, readonly number[]>>;
  readonly labelRank: Readonly<Record<string, number>>;
  readonly targets: Readonly<Record<string, readonly number[]>>;
  readonly frames: Readonly<Record<string, readonly number[]>>;
  readonly spark: readonly number[];
  /** Parts that have no plate and cannot be pressed. */
  readonly unmarked?: readonly string[];
}

/** The three files of a drawn place as they are read; assets/README.md says what stands in them. */
export interface DrawnPlace {
  readonly layout: Layout;
  readonly routes: RouteFile;
  readonly wiring: Wiring;
}

const PLACES = new Map<string, Place>();

/** Makes a drawing known by its name; from then on pictures of places that name it show it.
 *  @throws RangeError naming the piece of wiring that has no route */
export function enterDrawing(name: string, { layout, routes, wiring }: DrawnPlace): void {
  PLACES.set(name, openPlace(layout, routes, wiring));
}

/** The drawing of a place, or undefined if nobody has drawn it or it is not here yet. */
export function placeOf(drawing: string | undefined): Place | undefined {
  return drawing === undefined ? undefined : PLACES.get(drawing);
}

/** What is drawn for a pose: its own, or the nearest there is. */
export function posed<Drawn>(drawn: Readonly<Record<string, Drawn>>, pose: PoseName): Drawn | undefined {
  return drawn[pose] ?? (POSES[pose] === pose ? undefined : posed(drawn, POSES[pose]));
}

function openPlace(layout: Layout, routes: RouteFile, wiring: Wiring): Place {
  const poses = (Object.keys(POSES) as PoseName[]).map((pose) => [
    pose,
    wiring.pieces.map((piece) => stretch(piece, routes, posed(routes.poses, pose) ?? {})),
  ]);
  return {
    world: layout.world,
    groups: layout.groups,
    parallax: layout.parallax,
    standing: layout.parts.toSorted((a, b) => layout.groups.indexOf(a.group) - layout.groups.indexOf(b.group)),
    plates: mapped(layout.labels, point),
    ranks: layout.labelRank,
    targets: mapped(layout.targets, box),
    frames: mapped(layout.frames, box),
    spark: point(layout.spark),
    meeting_y: routes.meeting.y,
    stretches: Object.fromEntries(poses) as Place['stretches'],
    offers: wiring.offers,
    overlays: wiring.overlays,
    appears: wiring.appears,
    lit: wiring.lit,
    turns: wiring.turns,
    metal: wiring.metal,
  };
}

function stretch(piece: Piece, { routes, variants }: RouteFile, limbs: Routes): Stretch {
  const named = piece.routes ?? [piece.route ?? piece.id];
  const drawn =
    piece.points ??
    named.flatMap(
      (key) =>
        (piece.variant === undefined ? (piece.posed ? limbs : routes)[key] : variants[key]?.[piece.variant]) ?? [],
    );
  if (drawn.length < 2) throw new RangeError(`wiring of ${piece.id}: there is no route ${named.join(', ')}`);
  const whole = cut(points(drawn), piece.since && point(piece.since), piece.until && point(piece.until));
  return {
    id: piece.id,
    part: piece.part,
    route: piece.reversed ? whole.toReversed() : whole,
    of: piece.of ?? [piece.id],
    share: piece.share ?? 1,
    role: piece.role as Role | undefined,
    wire: piece.wire as Conductor['insulation'] | undefined,
    width: piece.width ?? 4,
    bare: piece.bare ?? false,
    earthing: piece.earthing ?? false,
    earthed: piece.earthed ?? false,
    absent: piece.absent ?? [],
    present: piece.present ?? [],
    breaks: mapped(piece.breaks ?? {}, point),
    loosens: mapped(piece.loosens ?? {}, point),
  };
}

function point([x = 0, y = 0]: readonly number[]): Point {
  return { x, y };
}

function box([x = 0, y = 0, width = 0, height = 0]: readonly number[]): Box {
  return { x, y, width, height };
}

function mapped<From, To>(
  record: Readonly<Record<string, From>>,
  change: (value: From) => To,
): Readonly<Record<string, To>> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, change(value)]));
}
