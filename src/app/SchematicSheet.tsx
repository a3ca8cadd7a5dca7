import './schematic.css';
import { memo, useCallback, useEffect, useMemo, useRef, useState, type RefObject } from 'react';
import { layOut, SchematicChart } from '../charts/index.ts';
import { planOf, schematic, sheetOf, type Sheet } from '../depiction/index.ts';
import { whatIsTheMatter } from '../explain/index.ts';
import type { Build } from '../installation/index.ts';
import { SelectedWay } from './SelectedWay.tsx';
import { Spots } from './Spots.tsx';
import { TextTwin } from './TextTwin.tsx';
import { useAccount } from './useAccount.ts';
import { useDepiction } from './useDepiction.ts';
import { useDesk, useSay, useVocabulary } from './useDesk.ts';
import { useSize } from './useSize.ts';

const NAME = 19; // size of a name in units of the sheet
const LEAST_NAME_px = 13;
const BACK_ROW_OF_WIDTH = 0.0125;

/** The installation as symbols and wires, as large as it fits and never too small to read. */
export const SchematicSheet = memo(function SchematicSheet({ bold }: { readonly bold: boolean }) {
  const say = useSay();
  const build = useDesk((desk) => desk.place.build);
  const title = useDesk((desk) => desk.place.title);
  const pointed = useDesk((desk) => desk.pointed);
  const covered = useDesk((desk) => desk.covered);
  const still = useDesk((desk) => desk.still);
  const timeline = useDesk((desk) => desk.timeline);
  const vocabulary = useVocabulary();
  const depiction = useDepiction();
  const sheet = useSheet(build);
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(frame);
  const [open, setOpen] = useState<string | null>(null);
  const parts = pointed?.parts;
  const isLit = useCallback((part: string) => parts?.includes(part) ?? false, [parts]);
  const { time_s } = depiction;
  const shown = useMemo(
    () =>
      sheet && sheet !== 'failed' && timeline.build === build ? schematic(sheet, timeline, time_s, vocabulary) : null,
    [sheet, timeline, build, time_s, vocabulary],
  );
  const spots = useMemo(() => {
    if (!shown) return depiction;
    const ribbons = shown.ribbons.map((one) => ({
      ...one,
      id: (one.branches.length === 1 && one.branches[0]) || one.id,
    }));
    return { ...depiction, ribbons, hotspots: shown.hotspots };
  }, [shown, depiction]);
  const view = useMemo(() => {
    const [wide, high] = shown ? [shown.width, shown.height] : [1600, 824];
    const least = Math.max(LEAST_NAME_px, bold ? size.width * BACK_ROW_OF_WIDTH : 0) / NAME;
    const scale = Math.max(least, Math.min(size.width / wide, size.height / high, 1.6));
    return { scale, x: 0, y: 0, width: wide * scale, height: high * scale };
  }, [shown, size, bold]);
  useStruck(frame, covered ? undefined : shown?.spark, view.scale);
  if (sheet === 'failed') return <TextTwin />;
  return (
    <div className="schematic-frame" ref={frame}>
      {shown ? (
        <div className="schematic-sheet" style={{ width: view.width, height: view.height }}>
          <SchematicChart schematic={shown} region={vocabulary} covered={covered} still={still} isLit={isLit} />
          <SelectedWay depiction={spots} view={view} />
          <Spots
            depiction={spots}
            view={view}
            font_px={Math.max(LEAST_NAME_px, Math.round(NAME * view.scale))}
            open={open}
            onOpen={setOpen}
          />
        </div>
      ) : (
        <p className="stage-loading">{say('app.loading')}</p>
      )}
      <PrintedWords title={title} />
      <TextTwin heard />
    </div>
  );
});

/** On paper: what is shown, what is the matter, what comes of it, and the cautions. */
function PrintedWords({ title }: { readonly title: string }) {
  const vocabulary = useVocabulary();
  const build = useDesk((desk) => desk.place.build);
  const conditions = useDesk((desk) => desk.conditions);
  const covered = useDesk((desk) => desk.covered);
  const { headline, cautions } = useAccount();
  return (
    <div className="printed" aria-hidden="true">
      <h2>
        {title}. {covered ? '' : headline}
      </h2>
      <p>{whatIsTheMatter(build.installation, conditions, vocabulary).join('. ')}</p>
      <p>{cautions.join(' ')}</p>
    </div>
  );
}

const sheets = new WeakMap<Build, Promise<Sheet>>();

/** The sheet of an installation, laid out once; null until it is there. */
function useSheet(build: Build): Sheet | 'failed' | null {
  const [made, setMade] = useState<{ readonly of: Build; readonly sheet: Sheet | 'failed' } | null>(null);
  useEffect(() => {
    let gone = false;
    const known = sheets.get(build) ?? laidOut(build);
    sheets.set(build, known);
    known.then(
      (sheet) => !gone && setMade({ of: build, sheet }),
      (error: unknown) => {
        console.info('The schematic cannot be laid out here; the words stand in for it.', error);
        if (!gone) setMade({ of: build, sheet: 'failed' });
      },
    );
    return () => {
      gone = true;
    };
  }, [build]);
  return made?.of === build ? made.sheet : null;
}

async function laidOut(build: Build): Promise<Sheet> {
  const plan = planOf(build);
  return sheetOf(plan, await layOut(plan.graph));
}

/** Where the sheet is larger than its frame, the fault comes to the middle when it strikes. */
function useStruck(
  frame: RefObject<HTMLDivElement | null>,
  spark: { readonly x: number; readonly y: number } | undefined,
  scale: number,
): void {
  const [x, y] = [spark?.x, spark?.y];
  useEffect(() => {
    const node = frame.current;
    if (!node || x === undefined || y === undefined) return;
    node.scrollTo({ left: x * scale - node.clientWidth / 2, top: y * scale - node.clientHeight / 2 });
  }, [frame, x, y, scale]);
}
