import type { DrillAtHand, DrilledThread } from '../holes/drilled-thread.ts';
import type { AgainstHole, HoleResult } from '../holes/hole-result.ts';
import type { ThreadData } from '../holes/thread-data.ts';
import { enlargingLines } from './enlarging-text.ts';
import { depthTexts, wallTexts } from './hole-depth-text.ts';
import { columns, listed, paragraph, wrapped } from './layout.ts';
import { sourceText } from './source-text.ts';
import { comparedText, fineMm, percentText } from './units.ts';

/** A tapped hole as it is read at the bench: the drill, the thread, its depth, its wall, and what was there before. */
export const holeText = (hole: HoleResult): string =>
  [
    ...wrapped(holeLine(hole), ''),
    ...paragraph('The thread', threadLines(hole)),
    ...paragraph('In the box', listed(hole.atHand === null ? [] : [atHandText(hole.thread, hole.atHand)])),
    ...paragraph('Depth', listed(depthTexts(hole))),
    ...paragraph('Wall', listed(wallTexts(hole))),
    ...enlargingLines(hole),
    ...paragraph('Take care', listed(cautions)),
    '',
  ].join('\n');

const cautions = [
  'Sizes only: nothing here says what the thread will hold. Measure the wall before you drill towards it.',
  'Deburr, try a piece of the same metal first, and clear the chips of a blind hole before the tap.',
];

/** The drill, or what stands against it, in one line. */
export function holeLine(hole: HoleResult): string {
  const drill = `drill ${drillText(hole.drilled)} for ${hole.thread.name}`;
  if (hole.against.length === 0) return `DRILL: ${drill}.`;
  return `NOT AS ASKED: ${drill}, but ${hole.against.map((code) => againstText(hole, code)).join('; and ')}.`;
}

function againstText({ wall, atHand, ...hole }: HoleResult, code: AgainstHole): string {
  switch (code) {
    case 'wall-too-thin': {
      const { afterMm, keepMm } = wall ?? { afterMm: 0, keepMm: 0 };
      const keep = `${comparedText(keepMm, afterMm, 'mm')} are to be kept`;
      return `it leaves ${comparedText(afterMm, keepMm, 'mm')} of wall, and ${keep}`;
    }
    case 'too-shallow': {
      const wanted = fineMm(hole.engagement?.wantedMm ?? 0);
      return `a hole so deep engages ${fineMm(hole.engagementWithinMm ?? 0)} at most, and ${wanted} are wanted`;
    }
    case 'no-drill-at-hand':
      return atHand === null ? 'there is no drill' : 'no drill in the box is right for it';
  }
}

/** `10.8 mm`, or `#7 (5.11 mm)`. */
function drillText({ drill }: Pick<DrilledThread, 'drill'>): string {
  return drill.name.endsWith('mm') ? drill.name : `${drill.name} (${fineMm(drill.diameterMm)})`;
}

function threadLines({ thread, drilled, clearance }: HoleResult): string[] {
  const mm3 = (value: number): string => `${value.toFixed(3)} mm`;
  const limits =
    thread.largestMinorMm === null
      ? `${mm3(thread.minorMm)} at the gauge plane`
      : `${mm3(thread.minorMm)} to ${mm3(thread.largestMinorMm)} (${thread.limitsOf})`;
  return columns([
    ['major diameter', mm3(thread.majorMm), ''],
    ['pitch', mm3(thread.pitchMm), ''],
    ['pitch diameter', mm3(thread.pitchDiameterMm), sourceText(thread.geometrySource)],
    ['minor diameter', limits, sourceText(thread.limitsSource)],
    ['tapping drill', drillText(drilled), sourceText(thread.drill.source)],
    ...shareRows(drilled),
    ...(thread.stressAreaMm2 === null
      ? []
      : [['stress area', `${thread.stressAreaMm2.toPrecision(3)} mm²`, 'computed']]),
    ...(clearance === null
      ? []
      : [
          [
            'bolt passes',
            `${clearance.fineMm} / ${clearance.mediumMm} / ${clearance.coarseMm} mm`,
            `fine, medium, coarse: ${sourceText(clearance.source)}`,
          ],
        ]),
  ]);
}

/** Both ways of counting, each by its name, since 100 % of one is 83 % of the other. */
const shareRows = ({ basicShare, handbookShare, limits }: DrilledThread): string[][] => [
  ...(basicShare === null
    ? []
    : [
        [
          'of the basic thread',
          percentText(basicShare),
          `of its height to D1${limits === null ? '' : `; ${limits} limits`}`,
        ],
      ]),
  ...(handbookShare === null
    ? []
    : [['as handbooks count', percentText(handbookShare), 'of ¾ H a side, (D − drill) / 1.299 P']]),
];

function atHandText(thread: ThreadData, drilled: DrillAtHand): string {
  const { verdict, basicShare } = drilled;
  const share = basicShare === null ? '' : ` and gives ${percentText(basicShare)} of the basic thread`;
  const nearest = `${drillText(drilled)} is the nearest`;
  switch (verdict) {
    case 'does':
      return `${drillText(drilled)} does${basicShare === null ? '' : `: ${percentText(basicShare)} of the basic thread`}.`;
    case 'loose':
      if (basicShare === 0) return `${nearest}: larger than ${thread.name} itself, it leaves no thread.`;
      return `${nearest}${share}: too large for ${thread.limitsOf}, so the thread is the weaker.`;
    case 'tight':
      return `${nearest}: too small, and the tap may break. Open the hole out to ${thread.minorMm.toFixed(2)} mm at the least, by reamer or boring.`;
  }
}
