import { memo } from 'react';
import { Covered } from './Covered.tsx';
import { useDepiction } from './useDepiction.ts';
import { useDesk, useSay } from './useDesk.ts';
import { ValueTable } from './ValueTable.tsx';

/** The picture in words and values, for a browser that cannot draw it and for a place that has no drawing. */
export const TextTwin = memo(function TextTwin() {
  const say = useSay();
  const covered = useDesk((desk) => desk.covered);
  const drawing = useDesk((desk) => desk.place.build.installation.drawing);
  const { twin } = useDepiction();
  return (
    <div className="twin" tabIndex={0} role="group" aria-label={say('stage.twin')}>
      <p className="quiet">{say(drawing === undefined ? 'desk.no.drawing' : 'graphics.none')}</p>
      {covered ? (
        <Covered>{say('covered.outcome')}</Covered>
      ) : (
        <>
          {twin.map((sentence, index) => (
            <p key={index}>{sentence}</p>
          ))}
          <ValueTable />
        </>
      )}
    </div>
  );
});
