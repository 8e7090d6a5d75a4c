import type { JobFile } from '../src/files/job-file.ts';
import type { Vec } from '../src/geometry/plane/vec.ts';
import { mmIn } from '../src/job/length-text.ts';
import type { App } from './app.ts';
import { goesIn } from './job/trial-edits.ts';
import { svgElement, svgText } from './stage/svg-element.ts';
import { type Size, toPane, type View } from './stage/view.ts';
import { trialWords } from './words/trial.ts';

const markPx = 11;

/** Every reading by its number, the place that is read now, the one to be read next, and where keys point to. */
export function trialMarks({ job, answers: { trial } }: App, view: View, { width, height }: Size): SVGElement[] {
  const now = job.now.value;
  if (now === null) return [];
  const told = trial.toldOf(now);
  const next = told?.kind === 'told' ? told.measureNext : null;
  const begun = trial.reading.value;
  return [
    ...(next === null ? [] : nextMark(toPane(view, next.at))),
    ...goesIn(now).flatMap(({ readings = [] }) =>
      readings.flatMap(({ id, at }) => numbered(placed(now, view, at), id)),
    ),
    ...(begun === null ? [] : [ring(placed(now, view, begun.at), markPx, 'place read')]),
    svgElement('path', { class: 'pointed-by-key', d: `M${width / 2 - 9},${height / 2}h18m-9-9v18` }),
  ];
}

/** The reading whose mark lies at a place of the pane; null where none does. */
export function readingAt({ job }: App, view: View, at: Vec): string | null {
  const now = job.now.peek();
  const readings = now === null ? [] : goesIn(now).flatMap(({ readings = [] }) => readings);
  const touched = readings.find((reading) => {
    const mark = now && placed(now, view, reading.at);
    return mark !== null && Math.hypot(mark.x - at.x, mark.y - at.y) <= markPx;
  });
  return touched?.id ?? null;
}

const placed = ({ fit }: JobFile, view: View, [x, y]: readonly [number, number]) =>
  toPane(view, { x: x * mmIn(fit.units), y: y * mmIn(fit.units) });

const ring = ({ x, y }: Vec, r: number, kind: string): SVGElement =>
  svgElement('circle', { class: kind, cx: x, cy: y, r });

const numbered = (at: Vec, id: string): SVGElement[] => [
  ring(at, markPx, 'place'),
  svgText(id, { x: at.x, y: at.y + 4 }, { class: 'reading-number' }),
];

const nextMark = (at: Vec): SVGElement[] => [
  ring(at, 17, 'measure-next'),
  svgText(trialWords.next, { x: at.x, y: at.y + 4 }, { class: 'reading-number' }),
];
