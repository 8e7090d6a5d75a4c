import { version } from '../../package.json';
import { checkJoint } from '../../src/clearance/check.ts';
import { travelCurve } from '../../src/clearance/travel-curve.ts';
import { drawFit } from '../../src/drawing/fit/draw-fit.ts';
import { roomToDraw } from '../../src/drawing/fit/draw-input.ts';
import { type MarkoutFile, markoutFiles } from '../../src/drawing/markout/markout-files.ts';
import { sheetShown } from '../../src/drawing/markout/markout-pages.ts';
import { markoutOf } from '../../src/drawing/markout/markout-sheets.ts';
import { heldViewer } from '../../src/drawing/report/held-viewer.ts';
import { reportHtml } from '../../src/drawing/report/report-html.ts';
import { papers } from '../../src/drawing/scene/papers.ts';
import { svgOf } from '../../src/drawing/svg/svg.ts';
import type { Finding } from '../../src/files/finding.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import type { Progress } from '../../src/geometry/progress.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { markingOut } from '../../src/markout/marking-out.ts';
import { type Bench, benchesOf } from '../../src/markout/marking-out-bench.ts';
import { alternativesTo } from '../../src/plan/alternatives/alternatives.ts';
import { planCut } from '../../src/plan/plan-cut.ts';
import { findingsText } from '../../src/words/finding-text.ts';
import { jobFileName } from '../job/job-file-name.ts';
import type { MadeFile, Making, Reply } from './questions.ts';
import { jointOf } from './work.ts';

/** The files of one kind that a job gives: sheets to mark out by, the drawing, the report. */
export function* make(job: JobFile, making: Making): Generator<Progress, Promise<Reply>> {
  const joint = jointOf(job);
  if (!joint.ok) return Promise.resolve(unfit(joint.findings));
  const { as, paper } = making;
  if (as === 'report' || as === 'drawing') {
    const file = yield* sheetOf(job, joint.value, making);
    return file.then((made) => ({ kind: 'made', files: [made] }));
  }
  const { sheets } = markoutOf(yield* benchesFor(joint.value));
  const made = sheets.map((sheet) => markoutFiles(sheet, { paper: papers[paper] }, as));
  return Promise.all(made).then((files) => ({ kind: 'made', files: files.flat().map(handed) }));
}

/** The sheets to mark out by, to look at before they are printed. */
export function* sheetsToShow(job: JobFile): Generator<Progress, Reply> {
  const joint = jointOf(job);
  if (!joint.ok) return unfit(joint.findings);
  const { sheets, notMade } = markoutOf(yield* benchesFor(joint.value));
  return { kind: 'sheets', sheets: sheets.map(sheetShown), notMade };
}

function* benchesFor(joint: Joint): Generator<Progress, Bench[]> {
  const plan = yield* planCut(joint);
  return benchesOf(joint, plan, markingOut(joint, plan), false);
}

const unfit = (findings: readonly Finding[]): Reply => ({ kind: 'findings', findings, text: findingsText(findings) });

const mediaTypes = {
  pdf: 'application/pdf',
  svg: 'image/svg+xml',
  dxf: 'image/vnd.dxf',
  csv: 'text/csv',
} as const satisfies Record<MarkoutFile['as'], string>;

const handed = ({ name, as, content }: MarkoutFile): MadeFile => ({
  name,
  mediaType: mediaTypes[as],
  data: typeof content === 'string' ? content : Uint8Array.from(content),
});

function* sheetOf(job: JobFile, joint: Joint, { as, date, page }: Making): Generator<Progress, Promise<MadeFile>> {
  const check = yield* checkJoint(joint);
  const plan = yield* planCut(joint);
  const alternatives = yield* alternativesTo(joint, plan);
  const room = roomToDraw(joint);
  if (as === 'drawing') {
    const data = svgOf(drawFit({ joint, check, plan, alternatives, room }));
    return Promise.resolve({ name: jobFileName(job, '.svg'), mediaType: 'image/svg+xml', data });
  }
  const curve = joint.fit.legs.length === 0 ? null : yield* travelCurve(joint);
  const told = {
    joint,
    check,
    room,
    curve,
    plan,
    tables: markingOut(joint, plan),
    alternatives,
    inputs: [],
    date,
    version,
  };
  return heldViewer(page, job).then((viewer) => ({
    name: jobFileName(job, '.html'),
    mediaType: 'text/html',
    data: reportHtml({ ...told, viewer }),
  }));
}
