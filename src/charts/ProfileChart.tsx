import { memo } from 'react';
import type { Profile, Riser } from '../depiction/index.ts';

/** How the profile is laid out. */
interface ProfileChartProps {
  readonly profile: Profile;
  readonly width: number;
  readonly height: number;
  /** Size of the words, px. */
  readonly font: number;
  /** From the drawing's x to px from the left edge of the chart. */
  readonly place: (x: number) => number;
  /** Worded names of the two ways. */
  readonly outLabel: string;
  readonly homeLabel: string;
  readonly isLit: (part: string) => boolean;
  /** Null when the pointer leaves. */
  readonly onPoint: (part: string | null) => void;
  readonly onPress: (part: string) => void;
}

const TOP = 20;
const BOTTOM = 26;
const GLYPH_em = 0.54; // wide, on average
const LINE_em = 1.3;
const TICKS_APART_em = 1.7;

/** The potential staircase: volts of the way out above, of the way home below, over the same x as the drawing. The gap
 *  between them closes at the fault; where a line falls, volts are spent. */
export const ProfileChart = memo(function ProfileChart({
  profile,
  width,
  height,
  font,
  place,
  outLabel,
  homeLabel,
  isLit,
  onPoint,
  onPress,
}: ProfileChartProps) {
  const volts = [...profile.out, ...profile.home].map((riser) => riser.volts);
  const ticks = profile.ticks.map((tick) => tick.volts);
  const low = Math.min(0, ...volts, ...ticks);
  const high = Math.max(...volts, ...ticks, 1);
  const y = (value: number) => TOP + ((high - value) / (high - low)) * (height - TOP - BOTTOM);
  const line = (risers: readonly Riser[]) => risers.map((riser) => `${px(place(riser.x))} ${px(y(riser.volts))}`);
  const out = line(profile.out);
  const home = line(profile.home);
  const { touch } = profile;
  const shown = spaced(profile.ticks, y, font);
  const says = touch === undefined ? [] : inLines(touch.label);
  const fits = touch !== undefined && place(touch.x) + 12 + longest(says) * GLYPH_em * font < width;
  const start = profile.out[0];
  const end = profile.home[profile.home.length - 1];
  return (
    <svg
      className="profile-chart"
      width={width}
      height={height}
      aria-hidden="true"
      onPointerLeave={() => onPoint(null)}
    >
      {shown.map((tick) => (
        <g key={tick.volts}>
          <line className="profile-grid" x1={0} x2={width} y1={px(y(tick.volts))} y2={px(y(tick.volts))} />
          <text className="profile-tick" x={14} y={px(y(tick.volts) - 4)}>
            {tick.label}
          </text>
        </g>
      ))}
      {out.length > 0 && home.length > 0 && <polygon className="profile-gap" points={[...out, ...home].join(' ')} />}
      <polyline className="profile-out" points={out.join(' ')} />
      <polyline className="profile-home" points={home.join(' ')} />
      {[profile.out, profile.home].map((risers, way) =>
        risers.map((riser, index) => {
          const before = risers[index - 1] ?? riser;
          const [left, right] = [place(before.x), place(riser.x)].toSorted((a, b) => a - b);
          const lit = isLit(riser.part);
          return (
            <g key={`${way} ${index}`}>
              {lit && (
                <polyline
                  className="profile-lit"
                  points={`${px(place(before.x))} ${px(y(before.volts))} ${px(place(riser.x))} ${px(y(riser.volts))}`}
                />
              )}
              <rect
                className="profile-hit"
                x={px((left ?? 0) - 4)}
                width={px((right ?? 0) - (left ?? 0) + 8)}
                y={way === 0 ? 0 : px(height / 2)}
                height={px(height / 2)}
                onPointerEnter={() => onPoint(riser.part)}
                onClick={() => onPress(riser.part)}
              />
            </g>
          );
        }),
      )}
      {start && (
        <text className="profile-label" x={px(place(start.x) + 8)} y={px(y(start.volts) + 1.45 * font)}>
          {outLabel}
        </text>
      )}
      {end && (
        <text className="profile-label profile-label-home" x={px(place(end.x) + 8)} y={px(y(end.volts) + 1.25 * font)}>
          {homeLabel}
        </text>
      )}
      {touch && (
        <g className="profile-touch">
          <rect
            x={px(place(touch.x) - 5)}
            width={10}
            y={px(y(Math.max(touch.from_V, touch.to_V)))}
            height={px(Math.max(2, Math.abs(y(touch.from_V) - y(touch.to_V))))}
            fill="url(#hazard)"
          />
          {says.map((line, row) => (
            <text
              key={line}
              x={px(place(touch.x) + (fits ? 12 : -12))}
              y={px((y(touch.from_V) + y(touch.to_V)) / 2 + 5 + (row - (says.length - 1) / 2) * LINE_em * font)}
              textAnchor={fits ? 'start' : 'end'}
            >
              {line}
            </text>
          ))}
        </g>
      )}
      <defs>
        <pattern id="hazard" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect className="hazard-ground" width="8" height="8" />
          <rect className="hazard-stripe" width="4" height="8" />
        </pattern>
      </defs>
    </svg>
  );
});

/** Lines of the scale that do not crowd each other; zero is always one of them. */
function spaced(ticks: Profile['ticks'], y: (volts: number) => number, font: number): Profile['ticks'] {
  const zero = ticks.find(({ volts }) => volts === 0);
  const from = zero ?? ticks[0];
  const next = ticks.find((tick) => tick !== from);
  if (!from || !next) return ticks;
  const every = Math.ceil((TICKS_APART_em * font) / Math.max(1, Math.abs(y(next.volts) - y(from.volts))));
  const start = ticks.indexOf(from);
  return ticks.filter((_, index) => (index - start) % every === 0);
}

/** The volts in one line, what they mean in the next. */
function inLines(label: string): readonly string[] {
  const colon = label.indexOf(': ');
  return colon < 0 ? [label] : [label.slice(0, colon + 1), label.slice(colon + 2)];
}

function longest(lines: readonly string[]): number {
  return Math.max(0, ...lines.map((line) => line.length));
}

function px(value: number): number {
  return Math.round(value * 10) / 10;
}
