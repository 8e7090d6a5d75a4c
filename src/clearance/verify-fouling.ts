import { apply, inverse } from '../geometry/rigid.ts';
import { vec } from '../geometry/vec.ts';
import type { FirstTouch, FoulingInterval, InstallAnswer } from '../model/check-answer.ts';
import { type Claim, pairName } from './verify-claim.ts';
import type { Doubt, DoubtCode } from './verify-doubt.ts';
import { type Found, type Looks, leastGap } from './verify-look.ts';
import type { Meeting } from './verify-solids.ts';
import { pathMm, placementAt } from './verify-way.ts';
import { momentDoubts } from './verify-witness.ts';

/** Instants are rounded to 1e-6 of a leg. */
const instant = 2e-6;

/** Outlines this near one another, mm, meet. */
const meetMm = 1e-5;

/** Metal must be this deep in other metal to overlap at all, mm. */
const overlapsMm = 1e-7;

/** Where in an interval overlap is looked for. */
const inside = [0.5, 0.25, 0.75, 0.1, 0.9] as const;

/** What the fouling intervals and the first touch of a way in say that is not so. */
export function foulingDoubts(
  claim: Claim,
  { state, fouling, firstTouch, nearest }: InstallAnswer,
  meetings: readonly Meeting[],
  looks: Looks,
  mostLooks: number,
): Doubt[] {
  const each = mostLooks / (inside.length + 2) / Math.max(1, fouling.length);
  const listed = fouling.length > 0 === (state === 'fouls');
  const touches = (firstTouch !== null) === (state === 'fouls' || state === 'touches');
  return [
    ...(listed
      ? []
      : [doubtOf('fouling-interval', `Fouling intervals listed: ${fouling.length}, with state "${state}".`)]),
    ...(touches
      ? []
      : [doubtOf('first-touch', `First touch ${firstTouch ? '' : 'not '}given, with state "${state}".`)]),
    ...fouling.flatMap((interval) => intervalDoubts(claim, interval, meetings, looks, each)),
    ...(firstTouch ? touchDoubts(firstTouch, nearest, fouling, meetings) : []),
  ];
}

const doubtOf = (what: DoubtCode, text: string, foundMm: number | null = null, at?: Doubt['at']): Doubt => ({
  what,
  where: 'install',
  text,
  claimedMm: 0,
  foundMm,
  ...(at && { at }),
});

function intervalDoubts(
  claim: Claim,
  interval: FoulingInterval,
  meetings: readonly Meeting[],
  looks: Looks,
  mostLooks: number,
): Doubt[] {
  const { leg, fixedSection, movingSection, fromAt, toAt } = interval;
  const name = `${pairName({ name: fixedSection }, { name: movingSection })} on leg ${leg} from ${fromAt} to ${toAt}`;
  const meeting = meetings.find((m) => isOf(interval, m));
  if (meeting === undefined) return [doubtOf('fouling-interval', `${name}: no such pair shares depth there.`)];
  const { way, stretch } = meeting;
  if (fromAt > toAt || fromAt < stretch.from - instant || toAt > stretch.to + instant) {
    return [doubtOf('fouling-interval', `${name}: it shares depth only from ${stretch.from} to ${stretch.to}.`)];
  }
  const gapAt = (at: number): Found => leastGap(meeting, { from: at, to: at }, 0, looks, mostLooks);
  const slack = ({ place }: Found): number => meetMm + 1e-6 * pathMm(way, place);
  const apart = [fromAt, toAt].map(gapAt).filter((end) => end.gapMm > slack(end));
  const within = inside.map((part) => gapAt(fromAt + part * (toAt - fromAt)));
  const overlaps = within.some(({ gapMm }) => gapMm < -overlapsMm) || toAt - fromAt <= instant;
  return [
    ...momentDoubts(
      claim,
      { leg, at: fromAt, turnDeg: interval.fromTurnDeg, standOffMm: interval.fromStandOffMm },
      way,
    ),
    ...momentDoubts(claim, { leg, at: toAt, turnDeg: interval.toTurnDeg, standOffMm: interval.toStandOffMm }, way),
    ...apart.map(({ gapMm, at }) => doubtOf('fouling-ends', `${name}: at ${at} they are ${gapMm} mm apart.`, gapMm)),
    ...(overlaps ? [] : [doubtOf('no-overlap', `${name}: no overlap found inside.`, within[0]?.gapMm ?? null)]),
    ...within
      .filter((found) => found.gapMm > slack(found))
      .map(({ gapMm, at }) => doubtOf('no-overlap', `${name}: at ${at} they are ${gapMm} mm apart.`, gapMm)),
  ];
}

const isOf = (touch: Pick<FoulingInterval, 'leg' | 'fixedSection' | 'movingSection'>, m: Meeting): boolean =>
  m.leg === touch.leg && m.fixedSolid.name === touch.fixedSection && m.movingSolid.name === touch.movingSection;

/** The first touch is the nearest point of the answer, and the beginning of the first fouling. */
function touchDoubts(
  touch: FirstTouch,
  nearest: InstallAnswer['nearest'],
  fouling: readonly FoulingInterval[],
  meetings: readonly Meeting[],
): Doubt[] {
  const [x, y] = touch.where;
  const first = fouling.reduce<FoulingInterval | null>((a, b) => (a === null || isBefore(b, a) ? b : a), null);
  const agrees =
    nearest !== null &&
    nearest.leg === touch.leg &&
    nearest.fixedSection === touch.fixedSection &&
    nearest.movingSection === touch.movingSection &&
    Math.abs(nearest.at - touch.at) <= instant &&
    Math.abs(nearest.turnDeg - touch.turnDeg) <= instant &&
    Math.abs(nearest.standOffMm - touch.standOffMm) <= instant &&
    Math.hypot(nearest.fixedAt[0] - x, nearest.fixedAt[1] - y) <= instant;
  const leads = first === null || (first.leg === touch.leg && Math.abs(first.fromAt - touch.at) <= instant);
  return [
    ...(agrees
      ? []
      : [doubtOf('first-touch', 'The first touch and the nearest point are not the same.', null, touch.where)]),
    ...(leads
      ? []
      : [doubtOf('first-touch', 'The first touch is not where the first fouling begins.', null, touch.where)]),
    ...offOutline(touch, meetings),
  ];
}

const isBefore = (a: FoulingInterval, b: FoulingInterval): boolean =>
  a.leg < b.leg || (a.leg === b.leg && a.fromAt < b.fromAt);

/** Where they touch first lies on both outlines, or in both sections where they come into one another's depth. */
function offOutline({ where, ...touch }: FirstTouch, meetings: readonly Meeting[]): Doubt[] {
  const meeting = meetings.find((m) => isOf(touch, m));
  if (meeting === undefined)
    return [doubtOf('first-touch', 'The sections of the first touch share no depth.', null, where)];
  const p = vec(...where);
  const slack = meetMm + 1e-6 * pathMm(meeting.way, p);
  const q = apply(inverse(placementAt(meeting.way, touch.at)), p);
  const gaps = [meeting.fixed.gapMm(p, 1), meeting.moving.gapMm(q, 1)];
  const begins = touch.at <= meeting.stretch.from + instant;
  return gaps
    .filter((gap) => Math.abs(gap) > slack && !(begins && gap < 0))
    .map((gap) => doubtOf('first-touch', 'The first touch lies off an outline.', gap, where));
}
