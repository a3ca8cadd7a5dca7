import { describe, expect, test } from 'vitest';
import { readInstallation } from '../../src/installation/index.ts';
import { built } from './places.ts';

/** A source and one device across a load (invented), with whatever else is written. */
function text(device: string, { region = 'iec', conditions = '', joins = '[supply.plus, device.line]' } = {}): string {
  return `place: A bench
region: ${region}
parts:
  supply: { kind: source, emf_V: 230 }
  device: { ${device} }
joins:
  - [supply.minus, earth]
  - ${joins}
${conditions === '' ? '' : `conditions:\n${conditions}`}`;
}

/** What the reader says of it: code and message. */
function said(written: string): readonly string[] {
  const reading = readInstallation(written, 'test.yaml');
  return reading.ok ? [] : reading.diagnostics.map(({ code, message }) => `${code}: ${message}`);
}

const compares = '[supply.plus, device.line.supply]';

describe('a device in the file', () => {
  test.each([
    ['kind: device-by-points, holds_A: 10, opens: [{ at_A: 10, within_s: 5 }]', 'is not above 10'],
    ['kind: device-by-points, holds_A: 10, opens: [{ at_A: 20, within_s: 5 }, { at_A: 30, within_s: 6 }]', 'is longer'],
    ['kind: device-by-points, holds_A: 10, opens: [{ at_A: 20, within_s: 5 }], magnetic_to_A: 50', 'needs both ends'],
    [
      'kind: device-by-points, holds_A: 10, opens: [{ at_A: 20, within_s: 5 }], magnetic_from_A: 60, magnetic_to_A: 50',
      'is above magnetic_to_A',
    ],
    ['kind: residual-device, senses: [line, other]', 'names other, which is none of its poles'],
    ['kind: rcbo, rating_A: 16, opens: [everything]', 'names everything'],
    ['kind: residual-device, poles: [line, line]', 'names one conductor twice'],
  ])('%s is refused: %s', (device, message) => {
    expect(said(text(device)).some((one) => one.includes(message))).toBe(true);
  });

  test.each([
    ['kind: fuse, rating_A: 16', 'iec', 'gg'],
    ['kind: fuse, rating_A: 20', 'north-america', 'ul248-time-delay'],
    ['kind: breaker, rating_A: 20', 'north-america', 'ul489'],
  ])('%s in %s is of the family %s', (device, region, family) => {
    expect(
      built(
        text(device, { region, joins: '[supply.plus, device.line]\n  - [device.load, supply.minus]' }),
      ).devices[0]?.settings({}).family,
    ).toBe(family);
  });

  test('a residual device is an IΔn one where the IEC rules and of class A in North America', () => {
    const whole = `${compares}\n  - [device.line.load, device.neutral.supply]\n  - [device.neutral.load, supply.minus]`;
    const settings = (region: string) =>
      built(text('kind: residual-device', { region, joins: whole })).devices[0]?.settings({});
    expect(settings('iec')).toEqual({ family: 'iec61008', residual_A: 0.03, type: 'A', selective: false });
    expect(settings('north-america')).toEqual({ family: 'ul943-class-a' });
  });

  test('a protective conductor through a residual device is neither compared nor opened unless it says so', () => {
    const names = ['line', 'neutral', 'protective'];
    const joins = names.map((name) => `[supply.plus, device.${name}.supply]\n  - [device.${name}.load, supply.minus]`);
    const [device] = built(
      text('kind: residual-device, poles: [line, neutral, protective]', { joins: joins.join('\n  - ') }),
    ).devices;
    expect(device?.poles.length).toBe(2);
    expect(device?.residual?.length).toBe(2);
  });
});

describe('a condition of a device', () => {
  const setting = (what: string) => `  set: { kind: setting, device: device, ${what} }`;
  test.each([
    ['kind: residual-device', 'residual_A: 0.3', 'iec', false],
    ['kind: residual-device', 'residual_A: 0.3', 'north-america', true],
    ['kind: residual-device, family: ul943-class-a', 'residual_A: 0.3', 'iec', true],
    ['kind: rcbo, rating_A: 16', 'residual_A: 0.3', 'iec', false],
    ['kind: rcbo, rating_A: 16', 'residual_A: 0.3', 'north-america', true],
    ['kind: afci, rating_A: 15', 'residual_A: 0.03', 'north-america', true],
    ['kind: afci, rating_A: 15, residual_A: 0.03', 'residual_A: 0.05', 'north-america', false],
  ])('of %s can set %s in %s, or is refused', (device, what, region, refused) => {
    const found = said(text(device, { region, conditions: setting(what), joins: compares }));
    expect(found.some((one) => one.includes('has no residual current'))).toBe(refused);
  });

  test('that sets nothing is refused, and so is a rating of what has none', () => {
    const of = (device: string, what: string) => said(text(device, { conditions: what, joins: compares }));
    expect(of('kind: rcbo, rating_A: 16', '  set: { kind: setting, device: device }').join()).toContain('sets nothing');
    expect(of('kind: residual-device', setting('rating_A: 20')).join()).toContain('is of kind residual-device');
  });

  test('cannot jam a monitor, which opens nothing', () => {
    const jammed = '  jam: { kind: jammed, device: device }';
    expect(said(text('kind: insulation-monitor', { conditions: jammed })).join()).toContain(
      'is of kind insulation-monitor',
    );
    expect(said(text('kind: fuse, rating_A: 16', { conditions: jammed })).join()).not.toContain('is of kind');
  });
});
