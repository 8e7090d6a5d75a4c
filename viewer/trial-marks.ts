import type { JobFile } from '../src/files/job-file.ts';
import { mmIn } from '../src/job/length-text.ts';
import type { App } from './app.ts';
import { goesIn } from './job/trial-edits.ts';
import { svgElement, svgText } from './stage/svg-element.ts';
import { toPane, type View } from './stage/view.ts';
import { trialWords } from './words/trial.ts';

/** Every reading by its number, the place that is read now, and the one to be read next. */
export function trialMarks({ job, answers: { trial } }: App, view: View): SVGElement[] {
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
    ...(begun === null ? [] : [ring(placed(now, view, begun.at), 11, 'place read')]),
  ];
}

const placed = ({ fit }: JobFile, view: View, [x, y]: readonly [number, number]) =>
  toPane(view, { x: x * mmIn(fit.units), y: y * mmIn(fit.units) });

interface Point {
  readonly x: number;
  readonly y: number;
}

const ring = ({ x, y }: Point, r: number, kind: string): SVGElement =>
  svgElement('circle', { class: kind, cx: x, cy: y, r });

const numbered = (at: Point, id: string): SVGElement[] => [
  ring(at, 11, 'place'),
  svgText(id, { x: at.x, y: at.y + 4 }, { class: 'reading-number' }),
];

const nextMark = (at: Point): SVGElement[] => [
  ring(at, 15, 'measure-next'),
  svgText(trialWords.next, { x: at.x + 19, y: at.y + 4 }, {}),
];
