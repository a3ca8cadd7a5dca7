import { lazy, useEffect } from 'react';
import { useDesk, useSay } from './useDesk.ts';

/** The picture is fetched once the words have been painted. */
async function picture() {
  await painted;
  return import('./Picture.tsx');
}

const LONGEST_ms = 1500; // where the browser does not tell when it has painted

const painted = new Promise<void>((resolve) => {
  new PerformanceObserver((list) => {
    if (list.getEntriesByName('first-contentful-paint').length > 0) resolve();
  }).observe({ type: 'paint', buffered: true });
  setTimeout(resolve, LONGEST_ms);
});

/** The picture, which comes after the words. */
export const Picture = lazy(async () => ({ default: (await picture()).Picture }));

/** The profile by itself. */
export const NarrowProfile = lazy(async () => ({ default: (await picture()).NarrowProfile }));

/** Stands where the picture will be, and has its drawing fetched once the words have been painted. */
export function PictureToCome() {
  const say = useSay();
  const drawing = useDesk((desk) => desk.place.build.installation.drawing);
  useEffect(() => {
    void painted.then(() => import('./drawings.ts')).then(({ fetchDrawing }) => fetchDrawing(drawing));
  }, [drawing]);
  return (
    <div className="stage">
      <p className="stage-loading">{say('app.loading')}</p>
    </div>
  );
}
