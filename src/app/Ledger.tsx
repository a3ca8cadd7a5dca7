import { memo } from 'react';
import { quantity, type Ledger as LedgerFacts, type WayHome } from '../explain/index.ts';
import { formOf, Swatch } from './Swatch.tsx';
import { usePointing } from './usePointing.ts';
import { useSay } from './useDesk.ts';

const TELLING = 0.02; // of the whole; a smaller way tells its stations when it is pressed

/** Where the current goes home: one line for each way, which add up to what left the winding. */
export const Ledger = memo(function Ledger({ ledger }: { readonly ledger: LedgerFacts | null }) {
  const say = useSay();
  if (!ledger) return <p className="quiet">{say('ledger.none')}</p>;
  const total = quantity(ledger.total_A, 'A');
  return (
    <table className="ledger">
      <caption>{say(ledger.of === 'fault' ? 'ledger.heading' : 'ledger.heading.load', { amperes: total })}</caption>
      <thead className="visually-hidden">
        <tr>
          <th scope="col">{say('ledger.way')}</th>
          <th scope="col">{say('ledger.amperes')}</th>
        </tr>
      </thead>
      <tbody>
        {ledger.ways.map((way) => (
          <Way key={way.name} way={way} of={ledger.of} tells={way.amperes >= ledger.total_A * TELLING} />
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">{say('ledger.total')}</th>
          <td>{total}</td>
        </tr>
      </tfoot>
    </table>
  );
});

const Way = memo(function Way({
  way,
  of,
  tells,
}: {
  readonly way: WayHome;
  readonly of: LedgerFacts['of'];
  readonly tells: boolean;
}) {
  const { lit, held, ...point } = usePointing(`way ${way.name}`, way.via, way.branches);
  const hover = { onPointerEnter: point.onPointerEnter, onPointerLeave: point.onPointerLeave };
  return (
    <>
      <tr className={lit ? 'way lit' : 'way'} {...hover}>
        <th scope="row">
          <button type="button" aria-pressed={held} {...point}>
            <Swatch form={formOf(way.kind, of)} />
            <span>{way.text}</span>
          </button>
        </th>
        <td>{quantity(way.amperes, 'A')}</td>
      </tr>
      {way.hops.length > 0 && (tells || held) && (
        <tr className={lit ? 'hops lit' : 'hops'} {...hover}>
          <td colSpan={2}>{way.hops.join(' → ')}</td>
        </tr>
      )}
    </>
  );
});
