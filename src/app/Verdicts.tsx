import { useMemo } from 'react';
import { tellVerdicts, verdicts } from '../explain/index.ts';
import { useDesk, useVocabulary } from './useDesk.ts';

/** What a designer asks of this place as it stands, each with its limit and what is left of it. */
export function Verdicts() {
  const vocabulary = useVocabulary();
  const { build, conditions } = useDesk((desk) => desk.told);
  const found = useMemo(() => verdicts(build, conditions), [build, conditions]);
  const told = useMemo(() => tellVerdicts(build, found, vocabulary), [build, found, vocabulary]);
  const { heads } = told;
  return (
    <>
      <p className="quiet">{told.note}</p>
      <p>{told.sum}</p>
      <table className="chart-table">
        <thead>
          <tr>
            {[heads.where, heads.what, heads.value, heads.limit, heads.margin, heads.judged].map((head) => (
              <th scope="col" key={head}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {told.rows.map(({ where, what, value, limit, margin, judged }, index) => (
            <tr key={index}>
              <th scope="row">{where}</th>
              <td>{what}</td>
              <td>{value}</td>
              <td>{limit}</td>
              <td>{margin}</td>
              <td>{judged}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h4>{told.clausesHeading}</h4>
      {[...told.clauses, told.caution].map((clause) => (
        <p className="quiet" key={clause}>
          {clause}
        </p>
      ))}
    </>
  );
}
