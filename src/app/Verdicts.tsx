import { useMemo } from 'react';
import { tellVerdicts, verdicts, type VerdictTable } from '../explain/index.ts';
import { useDesk, useVocabulary } from './useDesk.ts';

/** What a designer asks of this place as it stands, each with its limit and what is left of it. */
export function Verdicts() {
  const vocabulary = useVocabulary();
  const { build, conditions } = useDesk((desk) => desk.timeline);
  const found = useMemo(() => verdicts(build, conditions), [build, conditions]);
  const told = useMemo(() => tellVerdicts(build, found, vocabulary), [build, found, vocabulary]);
  return (
    <>
      <p className="quiet">{told.note}</p>
      <p>{told.sum}</p>
      {placesOf(told).map((rows) => (
        <Place key={rows[0]?.where ?? ''} rows={rows} heads={told.heads} />
      ))}
      <h4>{told.clausesHeading}</h4>
      {[...told.clauses, told.caution].map((clause) => (
        <p className="quiet" key={clause}>
          {clause}
        </p>
      ))}
    </>
  );
}

type Rows = VerdictTable['rows'];

/** Rows that stand together because they are about one place, in the order the places come first. */
function placesOf({ rows }: VerdictTable): readonly Rows[] {
  const places = [...new Set(rows.map(({ where }) => where))];
  return places.map((place) => rows.filter(({ where }) => where === place));
}

function Place({ rows, heads }: { readonly rows: Rows; readonly heads: VerdictTable['heads'] }) {
  return (
    <table className="chart-table">
      <caption>{rows[0]?.where}</caption>
      <thead>
        <tr>
          <th scope="col">{heads.what}</th>
          <th scope="col">{heads.value}</th>
          <th scope="col">{heads.limit}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ what, value, limit, margin, judged, verdict }) => (
          <tr key={`${what} ${verdict.line ?? ''}`}>
            <th scope="row">{what}</th>
            <td>{value}</td>
            <td>
              {limit}
              {judged !== '' && (
                <>
                  <br />
                  <b>{judged}</b>
                  {margin !== '' && ` (${margin})`}
                </>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
