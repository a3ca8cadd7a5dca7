import { label } from '../../explain/index.ts';
import type { Build } from '../../installation/index.ts';
import { boxesOf, type Box, type Words } from './box.ts';
import { circuitOf, type Circuit, type Unit } from './circuit.ts';

/** A box as the layout library takes it. */
export interface GraphNode {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly layoutOptions: Readonly<Record<string, string>>;
  readonly ports: {
    readonly id: string;
    readonly x: number;
    readonly y: number;
    readonly width: 0;
    readonly height: 0;
    readonly layoutOptions: Readonly<Record<string, string>>;
  }[];
}

/** An installation as a graph with ports, for a layout in layers from west to east. */
export interface Graph {
  readonly id: string;
  readonly layoutOptions: Readonly<Record<string, string>>;
  readonly children: GraphNode[];
  readonly edges: { readonly id: string; readonly sources: string[]; readonly targets: string[] }[];
}

/** The boxes and wires of an installation and the graph they make. */
export interface Plan {
  readonly circuit: Circuit;
  readonly boxes: readonly Box[];
  readonly graph: Graph;
}

const OPTIONS = {
  'elk.algorithm': 'layered',
  'elk.direction': 'RIGHT',
  'elk.edgeRouting': 'ORTHOGONAL',
  'elk.randomSeed': '1',
  'elk.padding': '[top=16,left=20,bottom=10,right=24]',
  'elk.spacing.nodeNode': '12',
  'elk.spacing.edgeNode': '10',
  'elk.spacing.edgeEdge': '16',
  'elk.layered.spacing.nodeNodeBetweenLayers': '30',
  'elk.layered.spacing.edgeNodeBetweenLayers': '21',
  'elk.layered.spacing.edgeEdgeBetweenLayers': '17',
  'elk.layered.nodePlacement.strategy': 'NETWORK_SIMPLEX',
  'elk.layered.crossingMinimization.semiInteractive': 'true',
  'elk.layered.unnecessaryBendpoints': 'true',
  'elk.separateConnectedComponents': 'false',
};

const kept = new WeakMap<Build, Plan>();

/** What the layout library has to place. The same build gives the same object. */
export function planOf(build: Build): Plan {
  const known = kept.get(build);
  if (known) return known;
  const circuit = circuitOf(build);
  const boxes = boxesOf(circuit, wordsOver);
  const plan = { circuit, boxes, graph: graphOf(circuit, boxes) };
  kept.set(build, plan);
  return plan;
}

/** Room for the longer of the two vocabularies' names, and a line for the figure. */
function wordsOver({ part, form }: Unit): Words {
  if (part === undefined || form === 'electrode') return { lines: 0, letters: 0 };
  const names = (['north-america', 'iec'] as const).map((words) => nameLines(label(part, words)));
  return {
    lines: Math.max(...names.map(({ length }) => length)) + 1,
    letters: Math.max(...names.flat().map(({ length }) => length)),
  };
}

const LETTERS = 11;

/** A name in lines short enough to stand over its symbol. */
export function nameLines(name: string): readonly string[] {
  const lines: string[] = [];
  for (const word of name.replaceAll('-', '- ').split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= LETTERS)
      lines[lines.length - 1] = last.endsWith('-') ? `${last}${word}` : `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

function graphOf({ leads }: Circuit, boxes: readonly Box[]): Graph {
  const depth = new Map(boxes.map(({ unit }) => [unit.id, unit.depth]));
  const children = boxes.map(({ unit, width, height, ports }, at): GraphNode => ({
    id: unit.id,
    width,
    height,
    layoutOptions: {
      'elk.portConstraints': 'FIXED_POS',
      'elk.position': `(0,${at * 100 + downward(unit)})`,
      'elk.alignment': 'LEFT',
    },
    ports: ports.map(({ lead, end, side, y }) => ({
      id: `${lead} ${end}`,
      x: side === 'west' ? 0 : width,
      y,
      width: 0,
      height: 0,
      layoutOptions: { 'elk.port.side': side === 'west' ? 'WEST' : 'EAST' },
    })),
  }));
  const edges = leads.map(({ id, ends: [a, b] }) => {
    const [from, to] = [depth.get(a.unit) ?? 0, depth.get(b.unit) ?? 0];
    const forward = a.side !== b.side ? a.side === 'east' : from <= to;
    const ends = [`${id} 0`, `${id} 1`];
    return { id, sources: [ends[forward ? 0 : 1] ?? ''], targets: [ends[forward ? 1 : 0] ?? ''] };
  });
  return { id: 'sheet', layoutOptions: OPTIONS, children, edges };
}

/** What goes down to the soil stands under everything else of its layer, people lowest of all. */
function downward({ form, drop }: Unit): number {
  if (form === 'person') return 4e6;
  if (form === 'electrode') return 3e6;
  return drop === undefined ? 0 : 2e6;
}
