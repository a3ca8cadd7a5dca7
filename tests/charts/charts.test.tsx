import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { BreakerChart, ProfileChart, sampleBand, ZoneChart, type LogAxis } from '../../src/charts/index.ts';
import { depict } from '../../src/depiction/index.ts';
import { run } from '../../src/scenario/index.ts';
import { bakery } from '../app/place.ts';

const across: LogAxis = { title: 'current', least: 0.9, most: 60, ticks: [{ at: 10, label: '10 ×' }] };
const up: LogAxis = { title: 'time', least: 0.005, most: 10_000, ticks: [{ at: 1, label: '1 s' }] };
const settings = { family: 'ul489', rating_A: 20 } as const;

/** The point of a chart, px. */
function pointIn(markup: string): { readonly x: number; readonly y: number } {
  const [, x, y] = /<circle[^>]*cx="([\d.]+)"[^>]*cy="([\d.]+)"/.exec(markup) ?? [];
  return { x: Number(x), y: Number(y) };
}

describe('the chart of a breaker', () => {
  const chart = (multiple: number, at_s: number) =>
    renderToStaticMarkup(
      <BreakerChart
        settings={settings}
        point={{ multiple, at_s }}
        title="band"
        pointLabel="here"
        across={across}
        up={up}
        width={320}
      />,
    );

  test('has a band whose early edge is never later than its late edge, and which falls as the current grows', () => {
    const band = sampleBand(settings, 1, 60);
    band.forEach(({ earliest_s, latest_s }, index) => {
      expect(earliest_s).toBeLessThanOrEqual(latest_s);
      if (index > 0) expect(latest_s).toBeLessThanOrEqual(band[index - 1]?.latest_s ?? Infinity);
    });
  });

  test('puts more current further to the right and more time further up; never lies at the upper edge', () => {
    expect(pointIn(chart(20, 0.01)).x).toBeGreaterThan(pointIn(chart(2, 0.01)).x);
    expect(pointIn(chart(20, 10)).y).toBeLessThan(pointIn(chart(20, 0.01)).y);
    expect(pointIn(chart(0.5, Infinity)).y).toBe(pointIn(chart(0.5, 10_000)).y);
  });
});

test('the zones of the body have their five boundaries and the person’s point, if there is one', () => {
  const chart = (heart_A: number | null) =>
    renderToStaticMarkup(
      <ZoneChart
        point={heart_A === null ? null : { heart_A, exposure_s: 1 }}
        title="zones"
        pointLabel="baker"
        zones={[]}
        across={{ ...across, least: 0.0001, most: 10 }}
        up={{ ...up, least: 0.01, most: 10 }}
        width={320}
      />,
    );
  expect(chart(0.03).match(/chart-curve-/g)).toHaveLength(5);
  expect(pointIn(chart(0.3)).x).toBeGreaterThan(pointIn(chart(0.03)).x);
  expect(chart(null)).not.toContain('<circle');
});

test('in the profile of a bolted fault the way out meets the way home, and a hand meets what the case stands at', () => {
  const timeline = run(bakery.build, { 'line touches the case': 'solid', 'mixer running': 'yes' });
  const { profile } = depict(timeline, 0, 'north-america');
  const markup = renderToStaticMarkup(
    <ProfileChart
      profile={profile}
      width={880}
      height={120}
      font={13}
      place={(x) => x * 0.55}
      outLabel="out"
      homeLabel="home"
      isLit={(part) => part === 'mixer run'}
      onPoint={() => {}}
      onPress={() => {}}
    />,
  );
  const ends = [...markup.matchAll(/class="profile-(out|home)" points="([^"]+)"/g)].map(([, , points = '']) =>
    points.split(' ').map(Number),
  );
  const [out = [], home = []] = ends;
  expect(out.at(-2)).toBeCloseTo(home[0] ?? NaN, 0); // the same x: the fault
  expect(Math.abs((out.at(-1) ?? NaN) - (home[1] ?? NaN))).toBeLessThan(6); // a solid fault spends next to nothing
  expect(markup).toContain('what a hand on the case meets');
  expect(markup).toContain('profile-lit');
});
