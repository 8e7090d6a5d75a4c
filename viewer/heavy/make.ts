import { version } from '../../package.json';
import { checkJoint } from '../../src/clearance/check.ts';
import { checkFacts } from '../../src/clearance/check-facts.ts';
import { travelCurve } from '../../src/clearance/travel-curve.ts';
import { drawFit } from '../../src/drawing/draw-fit.ts';
import { roomToDraw } from '../../src/drawing/draw-input.ts';
import { markoutOf } from '../../src/drawing/markout-sheets.ts';
import { papers } from '../../src/drawing/papers.ts';
import { pdfOf } from '../../src/drawing/pdf.ts';
import { heldViewer } from '../../src/drawing/report/held-viewer.ts';
import { reportHtml } from '../../src/drawing/report/report-html.ts';
import { svgOf } from '../../src/drawing/svg.ts';
import type { Progress } from '../../src/geometry/progress.ts';
import { planCut } from '../../src/grind/plan-cut.ts';
import { planFacts } from '../../src/grind/plan-facts.ts';
import type { Joint } from '../../src/joint/joint.ts';
import type { JobFile } from '../../src/model/job-file.ts';
import { findingsText } from '../../src/words/finding-text.ts';
import type { MadeFile, Making, Reply } from './questions.ts';
import { jointOf } from './work.ts';

/** The files of one kind that a job gives: sheets to mark out by, the drawing, the report. */
export function* make(job: JobFile, making: Making): Generator<Progress, Promise<Reply>> {
  const joint = jointOf(job);
  if (!joint.ok)
    return Promise.resolve({ kind: 'findings', findings: joint.findings, text: findingsText(joint.findings) });
  const files =
    making.as === 'report' || making.as === 'drawing'
      ? [yield* sheetOf(job, joint.value, making)]
      : yield* markoutFiles(joint.value, making);
  return Promise.all(files).then((made) => ({ kind: 'made', files: made }));
}

function* markoutFiles(joint: Joint, { as, paper }: Making): Generator<Progress, Promise<MadeFile>[]> {
  const plan = yield* planCut(joint);
  const { sheets } = markoutOf(joint, plan);
  const options = { paper: papers[paper] };
  return sheets.flatMap((sheet): Promise<MadeFile>[] => {
    const named = (ending: string, mediaType: string, data: MadeFile['data']): Promise<MadeFile> =>
      Promise.resolve({ name: `${sheet.name}${ending}`, mediaType, data });
    switch (as) {
      case 'pdf':
        return [
          pdfOf(sheet.name, sheet.scenes(false), options).then((bytes) => ({
            name: `${sheet.name}.pdf`,
            mediaType: 'application/pdf',
            data: Uint8Array.from(bytes),
          })),
        ];
      case 'dxf':
        return sheet.dxf === null ? [] : [named('.dxf', 'image/vnd.dxf', sheet.dxf)];
      case 'csv':
        return sheet.csv === null ? [] : [named('.csv', 'text/csv', sheet.csv)];
      default:
        return sheet.csv === null
          ? sheet.scenes(true).flatMap((scene, i) => named(`-${i + 1}.svg`, 'image/svg+xml', svgOf(scene)))
          : [];
    }
  });
}

function* sheetOf(job: JobFile, joint: Joint, { as, date, page }: Making): Generator<Progress, Promise<MadeFile>> {
  const check = yield* checkJoint(joint);
  const plan = yield* planCut(joint, { alternatives: true });
  const room = roomToDraw(joint);
  const name = (job.fit.title ?? 'job').replace(/[^\p{L}\p{N}]+/gu, '-').toLowerCase();
  if (as === 'drawing') {
    const data = svgOf(drawFit({ joint, check, plan, room }));
    return Promise.resolve({ name: `${name}.svg`, mediaType: 'image/svg+xml', data });
  }
  const curve = joint.fit.legs.length === 0 ? null : yield* travelCurve(joint);
  const checked = { joint, check, checkFacts: checkFacts(joint, check.answer), room, curve };
  const told = { ...checked, plan, planFacts: planFacts(plan.answer), inputs: [], date, version };
  return heldViewer(page, job).then((viewer) => ({
    name: `${name}.html`,
    mediaType: 'text/html',
    data: reportHtml({ ...told, viewer }),
  }));
}
