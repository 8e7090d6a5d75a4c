import { useEffect, useState } from 'preact/hooks';
import type { JobFile } from '../../../src/files/job-file.ts';
import type { Vec } from '../../../src/geometry/plane/vec.ts';
import type { XY } from '../../job/arc.ts';
import { emptyPart, withPart } from '../../job/part-edits.ts';
import { runsOf } from '../../job/run-edits.ts';
import '../../outlines.css';
import type { Pane } from '../../stage/pane.ts';
import { usePaneTool } from '../../stage/pane-tool.ts';
import { usePictureUnder } from '../../stage/picture-under.ts';
import type { View } from '../../stage/view.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import { forPlace, type OverPicture, pictureExtent } from '../photo/over-picture.ts';
import { PictureLoupe } from '../photo/picture-loupe.tsx';
import { AboutPart } from './about-part.tsx';
import { asksDowels, DowelQuestion } from './dowel-question.tsx';
import { DrawnPart } from './drawn-part.tsx';
import { extentOf } from './extent.ts';
import { type Axis, Handles } from './handles.tsx';
import { pressKey } from './keys.ts';
import { Loupe } from './loupe.tsx';
import { useLatest, usePainted } from './painted.ts';
import { PlaceList } from './place-list.tsx';
import { choosing, type Looking, openedPlace } from './selection.ts';
import { type Edit, type TraceContext, touchingOf } from './touch.ts';

interface Props {
  readonly job: JobFile;
  readonly edit: Edit;
  /** The part that is edited, by the name the job has it under. */
  readonly part: string;
  readonly setPart: (part: string) => void;
  readonly pane: Pane;
  /** The picture that outlines are traced over. */
  readonly over: OverPicture | null;
  /** In the part's drawing; null where that is not known. */
  readonly axis: Axis | null;
  /** What was read of the file brought in last: all of it is shown. */
  readonly read: string;
}

const nothingOpened: Looking = { opened: null, chosen: null, tool: choosing, said: '' };
const planeId = 'traced-plane';

/** The step in which a part's outlines are traced and edited: its lines on the card, its drawing in the pane. */
export function Tracing({ job, edit, part: file, setPart, pane, over, axis, read }: Props) {
  const [looking, setLooking] = useState(nothingOpened);
  const [view, setView] = useState<View>(() => pane.view());
  const [finger, magnify] = useState<Vec | null>(null);
  const [snapped, snap] = useState<XY | null>(null);
  const look = (changes: Partial<Looking>): void => setLooking((old) => ({ ...old, ...changes }));
  const context: TraceContext = { sheet: { job, file, view }, looking, look, edit, magnify, snap, over };
  const latest = useLatest(context);
  const part = job.parts[file];

  useEffect(() => pane.onView(setView), [pane]);
  useEffect(() => {
    setLooking(nothingOpened);
    if (latest.current.sheet.job.parts[file] === undefined) return;
    pane.fit(() => {
      const { over: beneath, sheet } = latest.current;
      const drawn = sheet.job.parts[file];
      // where nothing is traced yet, all that the picture shows is what may be
      const all = drawn?.sections.length === 0 && beneath !== null ? pictureExtent(beneath) : null;
      return all ?? extentOf(drawn ?? emptyPart('', 'mm'));
    });
  }, [pane, file, read]);
  useEffect(() => {
    pane.plane.id = planeId;
  }, [pane]);
  usePaneTool(
    pane,
    () => touchingOf(() => latest.current),
    (event) => pressKey(latest.current, event),
  );

  const runs = runsOf(job).filter((run) => run.part === file);
  const under = over && part && forPlace(over, part, openedPlace(job, file, looking.opened));
  usePictureUnder(pane, under?.beneath ?? null);
  useEffect(() => {
    pane.plane.classList.toggle('over-picture', under != null);
    return () => pane.plane.classList.remove('over-picture');
  }, [pane, under == null]);
  const drawn = part && <DrawnPart part={part} runs={runs} looking={looking} />;
  usePainted(
    pane.plane,
    <>
      {under && <g class="halo">{drawn}</g>}
      {drawn}
    </>,
  );
  usePainted(
    pane.labels,
    <>
      <Handles sheet={context.sheet} looking={looking} snap={snapped} axis={axis} pane={pane.size()} />
      {finger !== null && under && (
        <PictureLoupe
          at={finger}
          beneath={under.beneath}
          fromPlane={under.toPicture}
          view={view}
          pane={pane}
          of={planeId}
        />
      )}
      {finger !== null && !under && <Loupe at={finger} of={planeId} room={pane.element} />}
    </>,
  );

  const onKeyDown = (event: KeyboardEvent): void => {
    // on a button Enter and Backspace keep their own meaning
    if (event.key !== 'Enter' && event.key !== 'Backspace' && pressKey(latest.current, event)) event.preventDefault();
  };
  return (
    <section class="outlines" aria-label={words.heading}>
      <PartChoice job={job} file={file} setPart={setPart} />
      {part !== undefined && (
        <>
          {asksDowels(part) && <DowelQuestion context={context} part={part} />}
          <AboutPart key={file} part={part} change={(change) => edit((now) => withPart(now, file, change))} />
          <PlaceList context={context} part={part} onKeyDown={onKeyDown} />
        </>
      )}
      <p class="said" role="status">
        {looking.said}
      </p>
    </section>
  );
}

function PartChoice({
  job,
  file,
  setPart,
}: {
  readonly job: JobFile;
  readonly file: string;
  readonly setPart: (part: string) => void;
}) {
  return (
    <fieldset class="row" aria-label={words.whichPart}>
      {Object.entries(job.parts).map(([key, { name }]) => (
        <button key={key} type="button" aria-pressed={key === file} onClick={() => setPart(key)}>
          {name}
        </button>
      ))}
    </fieldset>
  );
}
