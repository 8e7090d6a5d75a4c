import { version } from '../../package.json';
import { drillFiles } from '../../src/drawing/drill/drill-files.ts';
import { drawingSvg } from '../../src/drawing/fit/drawing-svg.ts';
import type { SeenFrom } from '../../src/drawing/fit/side-profile.ts';
import { allSheets, allSheetsCount } from '../../src/drawing/markout/all-sheets.ts';
import { sheetShown } from '../../src/drawing/markout/markout-pages.ts';
import { type Markout, type MarkoutSheet, markoutOf } from '../../src/drawing/markout/markout-sheets.ts';
import { type MarkoutFile, sheetFiles } from '../../src/drawing/markout/sheet-files.ts';
import type { PrintOptions } from '../../src/drawing/pdf/pdf.ts';
import { heldViewer } from '../../src/drawing/report/held-viewer.ts';
import { reportHtml } from '../../src/drawing/report/report-html.ts';
import { type PaperName, papers } from '../../src/drawing/scene/papers.ts';
import type { Finding } from '../../src/files/finding.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import type { Progress } from '../../src/geometry/progress.ts';
import { type Bench, benchesOf } from '../../src/markout/marking-out-bench.ts';
import type { Analysis } from '../../src/pipeline/analysis.ts';
import { jobFileName } from '../job/job-file-name.ts';
import { inOne } from './in-one.ts';
import type { BesideAnswers, MadeFile, Making, Printing, Reply } from './questions.ts';
import { waysLastTold } from './ways-told.ts';
import { analysed } from './work.ts';

/** What a job gives of one kind, as one file: sheets to mark out by, the drawing, the report with what goes `beside` the answers. */
export function* make(
  job: JobFile,
  making: Making,
  from: SeenFrom | null = null,
  beside: BesideAnswers = {},
): Generator<Progress, Promise<Reply>> {
  const found = analysed(job);
  if (!found.ok) return Promise.resolve(unfit(found.findings));
  const { as, paper, bars, mirrored } = making;
  if (as === 'report' || as === 'drawing') {
    const file = yield* sheetOf({ ...job, ...beside }, found.value, making, from);
    return file.then((one) => ({ kind: 'made', file: inOne([one], one.name) }));
  }
  const options = { paper: papers[paper], bars };
  if (as === 'drill') {
    const drill = yield* found.value.drill();
    return drillFiles(found.value.joint, drill, options).then((files) => ({
      kind: 'made',
      file: inOne(files.map(handed), jobFileName(job, '.holes.zip')),
    }));
  }
  const { benches, sheets } = yield* markedOut(found.value, mirrored);
  const zipName = jobFileName(job, `${mirrored ? '-mirrored' : ''}.${as}.zip`);
  return filesOf(as, benches, sheets, options).then((files) => ({
    kind: 'made',
    file: inOne(files.map(handed), zipName),
  }));
}

async function filesOf(
  as: 'all' | MarkoutFile['as'],
  benches: readonly Bench[],
  sheets: readonly MarkoutSheet[],
  options: PrintOptions,
): Promise<readonly MarkoutFile[]> {
  if (as !== 'all') return (await Promise.all(sheets.map((sheet) => sheetFiles(sheet, options, as)))).flat();
  const one = await allSheets(benches, sheets, options);
  return one === null ? [] : [one];
}

/** The sheets to mark out by, to look at before they are printed. */
export function* sheetsToShow(job: JobFile, { bars, mirrored }: Omit<Printing, 'paper'>): Generator<Progress, Reply> {
  const found = analysed(job);
  if (!found.ok) return unfit(found.findings);
  const { benches, sheets, notMade } = yield* markedOut(found.value, mirrored);
  const pages = (name: PaperName): number | null => allSheetsCount(benches, sheets, { paper: papers[name], bars });
  const allPages = { a4: pages('a4'), a3: pages('a3'), letter: pages('letter') };
  return { kind: 'sheets', sheets: sheets.map((sheet) => sheetShown(sheet, bars)), allPages, notMade };
}

interface MarkedOut extends Markout {
  readonly benches: readonly Bench[];
}

const drawn = { asSeen: new WeakMap<Analysis, MarkedOut>(), mirrored: new WeakMap<Analysis, MarkedOut>() };

/** What there is to mark out by; looked at and taken in several kinds, and drawn once. */
function* markedOut(found: Analysis, mirrored: boolean): Generator<Progress, MarkedOut> {
  const known = mirrored ? drawn.mirrored : drawn.asSeen;
  const before = known.get(found);
  if (before !== undefined) return before;
  const benches = benchesOf(found.joint, yield* found.plan(), yield* found.tables(), mirrored);
  const made = { benches, ...markoutOf(benches) };
  known.set(found, made);
  return made;
}

const unfit = (findings: readonly Finding[]): Reply => ({ kind: 'findings', findings });

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

function* sheetOf(
  job: JobFile,
  { joint, ...stages }: Analysis,
  { as, date, page }: Making,
  from: SeenFrom | null,
): Generator<Progress, Promise<MadeFile>> {
  const check = yield* stages.check();
  const plan = yield* stages.plan();
  const alternatives = yield* stages.alternatives();
  const room = yield* stages.room();
  const drawn = { joint, check, plan, alternatives, room, ...(from === null ? {} : { seenFrom: from }) };
  if (as === 'drawing') {
    const data = drawingSvg(drawn);
    return Promise.resolve({ name: jobFileName(job, '.svg'), mediaType: 'image/svg+xml', data });
  }
  const curve = yield* stages.curve();
  const told = {
    ...drawn,
    curve,
    curveAfter: yield* stages.curveAfter(),
    tables: yield* stages.tables(),
    ways: waysLastTold(joint),
    drill: yield* stages.drill(),
    forgives: yield* stages.forgives(),
    foretold: yield* stages.foretold(),
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
