import { memo } from 'react';
import { Covered } from './Covered.tsx';
import { useDepiction } from './useDepiction.ts';
import { useDesk, useSay } from './useDesk.ts';
import { ValueTable } from './ValueTable.tsx';

/** The picture in words and values, for a browser that cannot draw it; `heard` where a picture shows the same beside it. */
export const TextTwin = memo(function TextTwin({ heard = false }: { readonly heard?: boolean }) {
  const say = useSay();
  const covered = useDesk((desk) => desk.covered);
  const drawing = useDesk((desk) => desk.place.build.installation.drawing);
  const { twin } = useDepiction();
  return (
    <div
      className={heard ? 'visually-hidden' : 'twin'}
      {...(heard ? {} : { tabIndex: 0 })}
      role="group"
      aria-label={say('stage.twin')}
    >
      {!heard && <p className="quiet">{say(drawing === undefined ? 'desk.no.drawing' : 'graphics.none')}</p>}
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
