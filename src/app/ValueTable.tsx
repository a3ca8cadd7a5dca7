import { memo } from 'react';
import { quantity } from '../explain/index.ts';
import { intervalAt } from './playhead.ts';
import { useDesk, useSay } from './useDesk.ts';

/** Every branch with its current and every point with its volts, at the moment shown. */
export const ValueTable = memo(function ValueTable() {
  const say = useSay();
  const { network, branches } = useDesk((desk) => desk.place.build);
  const interval = useDesk(({ timeline, playhead }) => timeline.intervals[intervalAt(timeline, playhead.time_s)]);
  if (!interval) return null;
  const { amperes, volts } = interval.solution;
  return (
    <div className="values">
      <table>
        <caption>{say('stage.table')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('table.part')}</th>
            <th scope="col">{say('table.amperes')}</th>
            <th scope="col">{say('table.degrees')}</th>
          </tr>
        </thead>
        <tbody>
          {branches.map(({ name }, index) => {
            const [re, im] = [amperes.re[index] ?? 0, amperes.im[index] ?? 0];
            return (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{quantity(Math.hypot(re, im), 'A')}</td>
                <td>{degrees(re, im)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <table>
        <thead>
          <tr>
            <th scope="col">{say('table.node')}</th>
            <th scope="col">{say('table.volts')}</th>
            <th scope="col">{say('table.degrees')}</th>
          </tr>
        </thead>
        <tbody>
          {network.nodes.map((name, index) => {
            const [re, im] = [volts.re[index] ?? 0, volts.im[index] ?? 0];
            return (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{quantity(Math.hypot(re, im), 'V')}</td>
                <td>{degrees(re, im)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
});

function degrees(re: number, im: number): string {
  if (Math.hypot(re, im) < 1e-9) return '–';
  return `${Math.round((Math.atan2(im, re) * 180) / Math.PI)}°`.replace('-', '\u2212');
}
