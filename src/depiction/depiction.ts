/** What there is to see, hear and read at one moment: plain data, every word and number in it already final. */

/** A place in the drawing, in units of the drawing (the world); x to the right, y down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A rectangle in units of the drawing. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What the current is there for. Person: it passes through somebody; stray: it flows where no normal current belongs. */
export type CurrentKind = 'load' | 'fault' | 'stray' | 'person';

/** One stretch of the drawing that carries at least 0.5 mA. */
export interface Ribbon {
  /** Name of the branch; a name of its own where several branches share a bar, or one branch takes two ways. */
  readonly id: string;
  /** Branches whose sum it shows; none for the soil between electrodes. */
  readonly branches: readonly string[];
  readonly part: string;
  /** From the `from` end of the branch to its `to` end. */
  readonly route: readonly Point[];
  readonly kind: CurrentKind;
  /** RMS, as solved. */
  readonly amperes: number;
  /** Part in phase with the picture's reference, along the route positive, A. These obey Kirchhoff at every junction. */
  readonly inPhase_A: number;
  readonly width_px: number;
  /** Units of the drawing per second, signed: positive runs along the route. A logarithm of the amperes. */
  readonly speed: number;
  /** Lag or lead against the reference after the sign is taken out, rad, within ±π/2. */
  readonly phase_rad: number;
  /** When the ribbon begins to appear after the fault has struck, s of the 0.6 s run home; 0 for what flowed before. */
  readonly delay_s: number;
  /** How long it takes to appear along its route, s. */
  readonly run_s: number;
  /** Distance of its upstream end from the winding, along the current, units of the drawing; keeps marks in step across joints. */
  readonly reach: number;
  /** True where it lies over soil, brick or metal and needs a casing to be seen. */
  readonly casing: boolean;
  /** Too little to be told of: what the soil beside a sound neutral carries. */
  readonly faint: boolean;
  /** The wire it lies on, if it lies on one. */
  readonly wire?: Conductor['insulation'];
  /** What it passes in front of. */
  readonly over: 'parts' | 'people';
}

/** A ribbon that a device has just cut off: it empties away from the break. */
export interface Drain {
  readonly id: string;
  /** When the emptying reaches it, s after the device opened. */
  readonly delay_s: number;
  readonly run_s: number;
  /** The end of the route from which it empties: the one nearer to the break. */
  readonly from: 'start' | 'end';
}

/** A drawn conductor, in the insulation colour of the region's standard. */
export interface Conductor {
  readonly id: string;
  readonly route: readonly Point[];
  readonly insulation: 'line' | 'line-b' | 'line-c' | 'neutral' | 'protective' | 'bare';
  readonly width: number;
  /** Where it is interrupted; a gap is drawn there. */
  readonly broken?: Point;
  /** Where its joint is loose. */
  readonly loose?: Point;
}

/** Touchable metal and its volts. */
export interface Halo {
  readonly part: string;
  /** Against the floor a person stands on, RMS. */
  readonly volts: number;
  /** Reached threshold, V a.c.; `none` draws nothing. */
  readonly level: 'none' | '25' | '50';
  readonly rect: Box;
  /** Ids of the drawings that are this metal. */
  readonly drawings: readonly string[];
}

/** One drawing that stands in the picture. */
export interface PartView {
  /** Stays the same while its drawing changes: a change of pose. */
  readonly id: string;
  /** Path of the SVG under assets/, without its ending. */
  readonly drawing: string;
  readonly x: number;
  readonly y: number;
  /** Layer, one of the depiction's `groups`. */
  readonly group: string;
  /** Painted from low to high. */
  readonly order: number;
  /** 0 to 1; what glows shows by its volts. */
  readonly opacity: number;
  /** True while it turns about its anchor `shaft`. */
  readonly turning: boolean;
  /** Share of the camera's movement by which it lags behind. */
  readonly parallax: number;
}

/** A thing that can be asked about and, where it may fail, changed. */
export interface Hotspot {
  readonly id: string;
  readonly name: string;
  /** Worded state with numbers, for example "47 V above the floor"; empty if there is nothing to say. */
  readonly detail: string;
  readonly plate: Point;
  readonly target: Box;
  /** Condition offered when it is pressed. */
  readonly condition?: string;
  /** Room for its name: 1 always, 2 when the camera is nearer, 3 only when it is selected. */
  readonly rank: number;
  /** True for the few whose name stands in the picture; the others show it on approach. */
  readonly prominent: boolean;
  /** Where no plate may stand: a face. */
  readonly keepClear?: Box;
}

/** One level of the potential staircase: the volts at x after the part has been passed. */
export interface Riser {
  readonly part: string;
  readonly x: number;
  /** Against the floor, in phase with the winding. */
  readonly volts: number;
  /** Worded name of the part and what it spends. */
  readonly label: string;
}

/** Where the volts of the biggest way are spent, aligned to the drawing's x. */
export interface Profile {
  readonly title: string;
  readonly out: readonly Riser[];
  readonly home: readonly Riser[];
  readonly touch?: { readonly x: number; readonly from_V: number; readonly to_V: number; readonly label: string };
  readonly ticks: readonly { readonly volts: number; readonly label: string }[];
}

/** The strip of time; positions 0 to 1, not linear in time so that milliseconds and minutes both fit. */
export interface Strip {
  readonly marks: readonly {
    readonly time_s: number;
    readonly position: number;
    readonly label: string;
    readonly kind: 'normal' | 'fault' | 'device' | 'person' | 'end';
  }[];
  readonly segments: readonly {
    readonly from: number;
    readonly to: number;
    readonly from_s: number;
    readonly to_s: number;
    readonly kind: 'normal' | 'fault' | 'open';
  }[];
  /** Position of the moment shown. */
  readonly now: number;
}

/** The person in the picture. */
export interface PersonView {
  readonly pose: 'away' | 'hand' | 'both' | 'startle' | 'held' | 'held both' | 'fallen';
  readonly reaction: 'calm' | 'startled' | 'held' | 'fallen';
  /** What is to be said of it; empty if nothing. */
  readonly caption: string;
}

/** Something heard. Every one has its caption. */
export interface Sounding {
  readonly id: string;
  readonly kind: 'contact' | 'breaker' | 'gfci';
  readonly time_s: number;
  readonly caption: string;
}

/** What is drawn from one event of a run to the next. */
export interface Picture {
  readonly frequency_Hz: number;
  readonly region: 'north-america' | 'iec';
  readonly world: { readonly width: number; readonly height: number };
  readonly frames: Readonly<Record<string, Box>>;
  /** Layers from back to front; `ribbons` and `body ribbons` are those of conductors and currents. */
  readonly groups: readonly string[];
  readonly parts: readonly PartView[];
  readonly conductors: readonly Conductor[];
  readonly ribbons: readonly Ribbon[];
  readonly drains: readonly Drain[];
  readonly halos: readonly Halo[];
  /** Where an arc burns now. */
  readonly spark?: Point;
}

/** Everything to be shown at one moment: what is drawn, and what is said and heard of it. */
export interface Depiction extends Picture {
  readonly time_s: number;
  readonly hotspots: readonly Hotspot[];
  readonly person: PersonView;
  readonly profile: Profile;
  readonly strip: Strip;
  /** Steady hum, 0 to 1 by the logarithm of the amperes that leave the winding. */
  readonly hum: { readonly level: number; readonly caption: string };
  /** All that is heard along the whole timeline, in order of time. */
  readonly sounds: readonly Sounding[];
  /** One sentence for a live region. */
  readonly announce: string;
  /** The whole picture in sentences, for those who cannot see it and for machines that cannot draw it. */
  readonly twin: readonly string[];
}
