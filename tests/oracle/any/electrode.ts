import type { Writing } from './writing.ts';

/** Metal in the soil by chance, called so; the terminal it is joined by. What needs the numeric method is rare: it is slow. */
export function anyElectrode(writing: Writing, name: string): string {
  const { draw, parts, ohm } = writing;
  const soil = draw.likely(0.7)
    ? { soil_ohm_m: draw.between(5, 5000) }
    : { soil: draw.oneOf(['clay and loam', 'sand and gravel', 'ashes and cinders']) };
  const season = draw.likely(0.2) ? { seasonal_factor: draw.between(0.8, 2) } : {};
  const top = `${name}.top`;
  const lay = (part: object, terminal = top): string => {
    parts[name] = part;
    return terminal;
  };
  const rod = { length_m: draw.between(1, 6), diameter_m: draw.between(0.01, 0.03) };
  switch (draw.likely(0.03) ? 'slow' : draw.whole(0, 9)) {
    case 'slow':
      return lay(
        draw.oneOf<object>([
          { kind: 'rod', ...rod, ...soil, below: { from_m: draw.between(1, 10), soil_ohm_m: draw.between(5, 5000) } },
          {
            kind: 'grid',
            length_m: draw.between(5, 20),
            width_m: draw.between(5, 20),
            wires_lengthwise: draw.whole(2, 4),
            wires_crosswise: draw.whole(2, 4),
            wire_diameter_m: draw.between(0.005, 0.02),
            depth_m: draw.between(0.3, 1),
            ...soil,
          },
        ]),
      );
    case 0:
      return lay({ kind: 'rod', ...rod, ...soil, ...season });
    case 1:
      return lay({
        kind: 'rods',
        count: 4,
        spacing_m: draw.between(1, 10),
        arrangement: draw.oneOf(['line', 'circle', 'square']),
        ...rod,
        ...soil,
      });
    case 2:
      return lay({
        kind: 'strip',
        length_m: draw.between(5, 50),
        depth_m: draw.between(0.3, 1),
        diameter_m: 0.01,
        ...soil,
      });
    case 3:
      return lay({
        kind: 'ring',
        diameter_m: draw.between(4, 30),
        wire_diameter_m: 0.01,
        depth_m: draw.between(0.3, 1),
        ...soil,
      });
    case 4:
      return lay({
        kind: 'plate',
        side_m: draw.between(0.3, 1.5),
        depth_m: draw.between(1, 3),
        lie: draw.oneOf(['upright', 'flat']),
        ...soil,
      });
    case 5:
      return lay(
        {
          kind: 'pipe',
          ...(draw.likely(0.5)
            ? {
                buried: { length_m: draw.between(30, 200), ...soil },
                resistance_ohm: ohm(1e-3, 0.1),
                outside_mm: draw.between(15, 100),
              }
            : {
                earth_resistance_ohm: ohm(0.5, 50),
                material: draw.oneOf(['copper', 'steel']),
                length_m: draw.between(1, 30),
                outside_mm: 22,
                wall_mm: 0.9,
              }),
        },
        draw.oneOf([`${name}.bond`, `${name}.tap`]),
      );
    case 6:
      return lay(
        {
          kind: 'structural-steel',
          earth_resistance_ohm: ohm(0.5, 50),
          length_m: draw.between(1, 50),
          section_mm2: draw.between(100, 1e4),
        },
        `${name}.tap`,
      );
    case 7:
      parts[name] = {
        kind: 'impedance',
        resistance_ohm: ohm(0.1, 500),
        reactance_ohm: draw.between(1e-3, 1),
        as: 'electrode',
      };
      writing.join(`${name}.b`, 'earth');
      return `${name}.a`;
    default:
      return lay({ kind: 'rod', resistance_ohm: ohm(0.5, 2000), ...season });
  }
}

/** A piece of soil with two rods and two places to stand, each lifted by the others: the rods' terminals. */
export function anySoil({ draw, parts, places }: Writing, name: string): readonly [string, string] {
  const rod = () => ({ kind: 'rod', length_m: draw.between(1, 3), diameter_m: 0.016 });
  const x = draw.between(0.5, 15);
  parts[name] = {
    kind: 'soil',
    soil_ohm_m: draw.between(10, 2000),
    electrodes: {
      'first rod': { ...rod(), at: [0, 0] },
      'second rod': { ...rod(), at: [draw.between(2, 20), 0] },
    },
    places: { near: { at: [x, 1], feet: 1 }, far: { at: [x, 2], feet: 1 } },
  };
  places.push(`${name}.near`, `${name}.far`);
  return [`${name}.first rod`, `${name}.second rod`];
}
