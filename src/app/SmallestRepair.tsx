import { useMemo } from 'react';
import { smallestRepair, tellRepair, temptingRepairs } from '../explain/index.ts';
import { useDesk, useVocabulary } from './useDesk.ts';

/** Every smallest set of repairs that makes all rules hold, and why the tempting ones do not. */
export function SmallestRepair() {
  const vocabulary = useVocabulary();
  const { build, conditions } = useDesk((desk) => desk.timeline);
  const found = useMemo(() => smallestRepair({ build, conditions }), [build, conditions]);
  const tempting = useMemo(() => temptingRepairs({ build, conditions }), [build, conditions]);
  const told = tellRepair(found, tempting, vocabulary, build.installation);
  return (
    <>
      {told.broken.length > 0 && (
        <>
          <h4>{told.brokenHeading}</h4>
          <List of={told.broken} />
        </>
      )}
      <h4>{told.heading}</h4>
      <p>{told.verdict}</p>
      <List of={told.sets} />
      {told.tempting.length > 0 && (
        <>
          <h4>{told.temptingHeading}</h4>
          <List of={told.tempting} />
        </>
      )}
      {told.broken.length > 0 && <p className="quiet">{told.caution}</p>}
    </>
  );
}

function List({ of }: { readonly of: readonly string[] }) {
  return of.map((text) => (
    <p className="repair" key={text}>
      {text}
    </p>
  ));
}
