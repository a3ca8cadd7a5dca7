/** A network written for a general circuit simulator, so that someone else's arithmetic can check ours. */
import type { Network, Values } from './network.ts';

/** Netlist in SPICE syntax of this network at this frequency: sources carry r.m.s. values in `ac`, branch b is
 *  measured by the 0 V source `vm<b>` (positive from → to), node k is `n<k>`, earth is `0`. Winding couplings are
 *  voltages controlled by the other currents, so nothing of our inverse is in it. Core c has the volts of a turn at node
 *  `u<c>`, into which every winding sends its ampere-turns. Names stand in comments only.
 *  @param frequency_Hz above 0
 *  @throws RangeError if the frequency isn't above 0 or a value is no finite number */
export function spiceNetlist(network: Network, values: Values, frequency_Hz: number): string {
  if (!(frequency_Hz > 0 && frequency_Hz < Infinity)) {
    throw new RangeError(`spiceNetlist: ${frequency_Hz} Hz is no frequency; write one above 0`);
  }
  const omega = 2 * Math.PI * frequency_Hz;
  const lines = [
    `* ${network.branches.length} branches at ${frequency_Hz} Hz, r.m.s.`,
    ...network.nodes.map((name, node) => `* ${nodeName(node)} = ${comment(name)}`),
  ];
  const woundIn = new Map<number, { w: number; k: number }>();
  network.windings.forEach(({ branches }, w) => branches.forEach((b, k) => woundIn.set(b, { w, k })));
  const turned = new Map<number, { c: number; turns: number }>();
  network.cores?.forEach(({ branches, turns }, c) =>
    branches.forEach((b, k) => turned.set(b, { c, turns: turns[k]! })),
  );
  const { injection } = values;
  const jr = (b: number): number => (injection ? finite(injection.re[b], network.branches[b]!.name) : 0);
  const ji = (b: number): number => (injection ? finite(injection.im[b], network.branches[b]!.name) : 0);
  /** The ammeter of what goes through a branch's impedance, beside what is injected. */
  const meter = (b: number): string => (jr(b) !== 0 || ji(b) !== 0 ? `vz${b}` : `vm${b}`);

  network.branches.forEach(({ name, from, to }, b) => {
    const place = woundIn.get(b);
    const members = place === undefined ? [] : network.windings[place.w]!.branches;
    const matrix = place === undefined ? values.impedance : values.coupling[place.w]!;
    const own = place === undefined ? b : place.k * members.length + place.k;
    lines.push(`* ${comment(name)}`);
    const steps: ((a: string, z: string) => string[])[] = [(a, z) => [`vm${b} ${a} ${z} dc 0 ac 0`]];
    if (meter(b) !== `vm${b}`) {
      const inner = `b${b}_1`;
      const end = nodeName(to);
      if (jr(b) !== 0) lines.push(`ir${b} ${inner} ${end} dc 0 ac ${jr(b)}`);
      if (ji(b) !== 0) lines.push(`ij${b} ${inner} ${end} dc 0 ac ${ji(b)} 90`);
      steps.push((a, z) => [`vz${b} ${a} ${z} dc 0 ac 0`]);
    }
    const re = finite(values.emf.re[b], name);
    const im = finite(values.emf.im[b], name);
    if (re !== 0 || im !== 0) {
      // Two sources, real and imaginary: an angle in degrees would cost digits.
      if (re !== 0) steps.push((a, z) => [`ve${b} ${z} ${a} dc 0 ac ${re}`]);
      if (im !== 0) steps.push((a, z) => [`vj${b} ${z} ${a} dc 0 ac ${im} 90`]);
    }
    members.forEach((other, l) => {
      if (place === undefined || l === place.k) return;
      const at = place.k * members.length + l;
      const sense = `x${b}_${other}`;
      const aside = series(
        `x${b}_${other}`,
        sense,
        '0',
        finite(matrix.re[at], name),
        finite(matrix.im[at], name),
        omega,
      );
      if (aside.length === 0) return;
      lines.push(`fx${b}_${other} 0 ${sense} ${meter(other)} 1`, ...aside);
      steps.push((a, z) => [`ex${b}_${other} ${a} ${z} ${sense} 0 1`]);
    });
    const core = turned.get(b);
    if (core !== undefined) {
      lines.push(`fu${b} 0 u${core.c} ${meter(b)} ${core.turns}`);
      steps.push((a, z) => [`eu${b} ${a} ${z} u${core.c} 0 ${core.turns}`]);
    }
    const r = finite(matrix.re[own], name);
    const x = finite(matrix.im[own], name);
    if (r !== 0 && Math.abs(r) < 1) {
      // As a conductance, the thousands of siemens of a joint would bury the microamperes that pass it; as a voltage
      // controlled by its own current they stay exact.
      steps.push((a, z) => [`hz${b} ${a} ${z} ${meter(b)} ${r}`]);
      if (x !== 0) steps.push((a, z) => series(`z${b}`, a, z, 0, x, omega));
    } else if (r !== 0 || x !== 0) {
      steps.push((a, z) => series(`z${b}`, a, z, r, x, omega));
    }
    steps.forEach((step, s) => {
      const a = s === 0 ? nodeName(from) : `b${b}_${s}`;
      const z = s === steps.length - 1 ? nodeName(to) : `b${b}_${s + 1}`;
      lines.push(...step(a, z));
    });
  });
  return `${lines.join('\n')}\n`;
}

/** Elements in series that make up R + jX at ω; none for zero, since a simulator reads 0 ohm as something else. */
function series(id: string, from: string, to: string, r: number, x: number, omega: number): string[] {
  const middle = r !== 0 && x !== 0 ? `m${id}` : undefined;
  const lines: string[] = [];
  if (r !== 0) lines.push(`r${id} ${from} ${middle ?? to} ${r}`);
  if (x > 0) lines.push(`l${id} ${middle ?? from} ${to} ${x / omega}`);
  if (x < 0) lines.push(`c${id} ${middle ?? from} ${to} ${-1 / (x * omega)}`);
  return lines;
}

function nodeName(node: number): string {
  return node === 0 ? '0' : `n${node}`;
}

/** A name that cannot break out of its comment line. */
function comment(name: string): string {
  return name.replace(/[^\x20-\x7e]+/g, ' ');
}

function finite(value: number | undefined, name: string): number {
  if (value === undefined || !Number.isFinite(value)) {
    throw new RangeError(`spiceNetlist: branch "${name}" has the value ${value}; write a finite number`);
  }
  return value;
}
