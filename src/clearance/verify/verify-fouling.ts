import type { FirstTouch, FoulingStretch, WayInResult } from '../check-result.ts';
import { type Doubt, type DoubtCode, doubt } from './verify-doubt.ts';
import { isNamed, type Meeting, pairText } from './verify-extrusions.ts';
import { instant, overlapsMm, slackMm } from './verify-limits.ts';
import { type LeastGap, type Looks, leastGap } from './verify-look.ts';
import { momentDoubts } from './verify-nearest.ts';

/** Where in an interval overlap is looked for. */
const inside = [0.5, 0.25, 0.75, 0.1, 0.9] as const;

/** What the fouling intervals and the first touch of a way in say that is not so. */
export function foulingDoubts(
  { state, fouling, firstTouch, nearest }: WayInResult,
  meetings: readonly Meeting[],
  looks: Looks,
  mostLooks: number,
): Doubt[] {
  const each = mostLooks / (inside.length + 2) / Math.max(1, fouling.length);
  const listed = fouling.length > 0 === (state === 'fouls');
  const touches = (firstTouch !== null) === (state === 'fouls' || state === 'touches');
  return [
    ...(listed ? [] : [wayInDoubt('fouling', `With "${state}", ${fouling.length} fouling intervals are listed.`)]),
    ...(touches
      ? []
      : [wayInDoubt('first-touch', `With "${state}", the first touch is ${firstTouch ? '' : 'not '}given.`)]),
    ...fouling.flatMap((stretch) => intervalDoubts(stretch, meetings, looks, each)),
    ...(firstTouch ? touchDoubts(firstTouch, nearest, fouling) : []),
  ];
}

const wayInDoubt = (what: DoubtCode, text: string, foundMm: number | null = null): Doubt =>
  doubt(what, 'install', text, { foundMm });

function intervalDoubts(
  fouling: FoulingStretch,
  meetings: readonly Meeting[],
  looks: Looks,
  mostLooks: number,
): Doubt[] {
  const { from, to, ...sections } = fouling;
  const [fromAt, toAt] = [from.at, to.at];
  const pair = { ...sections, leg: from.leg };
  const name = `${pairText(pair)} from ${fromAt} to ${toAt}`;
  const meeting = meetings.find((m) => isNamed(m, pair));
  if (meeting === undefined) return [wayInDoubt('fouling', `${name}: they share no depth.`)];
  const { way, stretch } = meeting;
  if (fromAt > toAt || fromAt < stretch.from - instant || toAt > stretch.to + instant) {
    return [wayInDoubt('fouling', `${name}: they share depth only from ${stretch.from} to ${stretch.to}.`)];
  }
  const gapAt = (at: number): LeastGap => leastGap(meeting, { from: at, to: at }, 0, looks, mostLooks);
  const within = inside.map((part) => gapAt(fromAt + part * (toAt - fromAt)));
  const apart = [gapAt(fromAt), ...within, gapAt(toAt)].find(({ gapMm, place }) => gapMm > slackMm(meeting, place));
  const overlaps = within.some(({ gapMm }) => gapMm < -overlapsMm) || toAt - fromAt <= instant;
  return [
    ...momentDoubts('install', from, way),
    ...momentDoubts('install', to, way),
    ...(apart ? [wayInDoubt('fouling', `${name}: at ${apart.at} they are ${apart.gapMm} mm apart.`, apart.gapMm)] : []),
    ...(overlaps ? [] : [wayInDoubt('no-overlap', `${name}: nothing overlaps.`, within[0]?.gapMm ?? null)]),
  ];
}

/** The first touch is the nearest point of the result, and the beginning of the first fouling. */
function touchDoubts(touch: FirstTouch, nearest: WayInResult['nearest'], fouling: readonly FoulingStretch[]): Doubt[] {
  const first = fouling.map(({ from }) => from).sort((a, b) => a.leg - b.leg || a.at - b.at)[0];
  const agrees =
    nearest !== null &&
    nearest.leg === touch.leg &&
    nearest.fixedSection === touch.fixedSection &&
    nearest.movingSection === touch.movingSection &&
    isSame(
      [nearest.at, nearest.turnRad, nearest.standOffMm, nearest.fixedAt.x, nearest.fixedAt.y],
      [touch.at, touch.turnRad, touch.standOffMm, touch.where.x, touch.where.y],
    );
  const leads = first === undefined || (first.leg === touch.leg && isSame([first.at], [touch.at]));
  return [
    ...(agrees ? [] : [wayInDoubt('first-touch', 'First touch and nearest point are not the same.')]),
    ...(leads ? [] : [wayInDoubt('first-touch', 'The first touch is not where the first fouling begins.')]),
  ];
}

const isSame = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((x, i) => Math.abs(x - (b[i] as number)) <= instant);
