import { type ComponentChild, render } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { JobFile } from '../../../src/model/job-file.ts';
import type { XY } from '../../job/arc.ts';
import { withPart } from '../../job/part-edits.ts';
import { runsOf } from '../../job/run-edits.ts';
import '../../outlines.css';
import type { Pane } from '../../stage/pane.ts';
import type { Point, View } from '../../stage/view.ts';
import { outlineWords as words } from '../../words/outlines.ts';
import { AboutPart } from './about-part.tsx';
import { choosing, type Looking } from './chosen.ts';
import { DrawnPart } from './drawn-part.tsx';
import { extentOf } from './extent.ts';
import { Handles } from './handles.tsx';
import { pressKey } from './keys.ts';
import { Loupe } from './loupe.tsx';
import { PlaceList } from './place-list.tsx';
import { type Bench, type Edit, touchingOf } from './touch.ts';

interface Props {
  readonly job: JobFile;
  readonly edit: Edit;
  /** The part that is edited, by the name the job has it under. */
  readonly part: string;
  readonly setPart: (part: string) => void;
  readonly pane: Pane;
}

const nothingOpened: Looking = { opened: null, chosen: null, tool: choosing, said: '' };
const planeId = 'traced-plane';

/** The step in which a part's outlines are traced and edited: its lines on the card, its drawing in the pane. */
export function Tracing({ job, edit, part: file, setPart, pane }: Props) {
  const [looking, setLooking] = useState(nothingOpened);
  const [view, setView] = useState<View>(() => pane.view());
  const [under, magnify] = useState<Point | null>(null);
  const [snapped, snap] = useState<XY | null>(null);
  const look = (changes: Partial<Looking>): void => setLooking((old) => ({ ...old, ...changes }));
  const bench: Bench = { sheet: { job, file, view }, looking, look, edit, magnify, snap };
  const latest = useLatest(bench);
  const part = job.parts[file];

  useEffect(() => pane.onView(setView), [pane]);
  useEffect(() => {
    setLooking(nothingOpened);
    const drawn = latest.current.sheet.job.parts[file];
    if (drawn !== undefined) pane.fit(extentOf(drawn));
  }, [pane, file]);
  useEffect(() => {
    pane.plane.id = planeId;
    pane.setTouching(touchingOf(() => latest.current));
    const onKey = (event: KeyboardEvent): void => {
      if (event.target !== pane.element || !pressKey(latest.current, event)) return;
      event.preventDefault();
      event.stopImmediatePropagation();
    };
    // before the pane's own keys, which move its view
    pane.element.addEventListener('keydown', onKey, true);
    return () => {
      pane.setTouching({});
      pane.element.removeEventListener('keydown', onKey, true);
    };
  }, [pane]);

  const runs = runsOf(job).filter((run) => run.part === file);
  usePainted(pane.plane, part && <DrawnPart part={part} runs={runs} looking={looking} />);
  usePainted(
    pane.labels,
    <>
      <Handles sheet={bench.sheet} looking={looking} snap={snapped} />
      {under !== null && <Loupe at={under} of={planeId} width={pane.element.clientWidth} />}
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
          <AboutPart key={file} part={part} change={(change) => edit((now) => withPart(now, file, change))} />
          <PlaceList bench={bench} part={part} onKeyDown={onKeyDown} />
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

function useLatest<T>(value: T): { readonly current: T } {
  const ref = useRef(value);
  ref.current = value;
  return ref;
}

/** Keeps something painted in a group of the pane as long as the step is shown. */
function usePainted(into: SVGGElement, what: ComponentChild): void {
  const group = useRef<SVGGElement | null>(null);
  useLayoutEffect(() => {
    const own = document.createElementNS('http://www.w3.org/2000/svg', 'g');
    into.append(own);
    group.current = own;
    return () => {
      render(null, own);
      own.remove();
    };
  }, [into]);
  useLayoutEffect(() => {
    if (group.current !== null) render(what, group.current);
  });
}
