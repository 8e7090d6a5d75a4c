import type { Casting, DepthRange, Section } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import type { LikelyDepths, ReasonNotice, StartRemedy } from './notices.ts';
import { atHome, sectionMeetings, standingAt, type Way, waysOf } from './passings.ts';

/** What depths alone tell against a job: sections that never share any, or share it before the way in begins. */
export function depthReasons(joint: Joint): ReasonNotice[] {
  const starts = startReason(joint);
  if (sharesAtHome(joint)) return starts;
  if (!sharesOnTheWay(joint)) return [{ code: 'never-shares-depth', likely: likelyDepths(joint) }];
  return [{ code: 'home-shares-nothing', likely: likelyDepths(joint) }, ...starts];
}

/** The first position is taken as given: what happens on the way to it is not checked. */
function startReason(joint: Joint): ReasonNotice[] {
  const first = joint.fit.legs[0]?.from;
  if (first === undefined) return [];
  const [meeting] = sectionMeetings(joint, [standingAt(first)]);
  if (meeting === undefined) return [];
  const [fixedSection, movingSection] = [meeting.fixed.section.id, meeting.moving.section.id];
  return [{ code: 'starts-in-shared-depth', fixedSection, movingSection, remedy: startRemedy(joint) }];
}

function startRemedy({ fixed, moving }: Joint): StartRemedy {
  if (sideOf(fixed) === 'proud') return { kind: 'signs', file: fixed.file };
  const endless = [...fixed.sections, ...moving.sections].filter(({ depth }) => depth === null);
  return endless.length === 0
    ? { kind: 'farther-out' }
    : { kind: 'state-depths', sections: endless.map(({ id }) => id) };
}

const sharesAtHome = (joint: Joint): boolean => anyShares(joint, [atHome]);

const sharesOnTheWay = (joint: Joint): boolean => anyShares(joint, waysOf(joint.fit.legs));

function anyShares(joint: Pick<Joint, 'fit' | 'fixed' | 'moving'>, ways: readonly Way[]): boolean {
  const [meeting] = sectionMeetings(joint, ways);
  return meeting !== undefined;
}

/** At home the two parts turned over give the same as one with its depths turned round, so their own sides tell. */
function likelyDepths(joint: Joint): LikelyDepths {
  const { fixed, moving } = joint;
  const files = { fixed: fixed.file, moving: moving.file };
  const turned = [
    { ...joint, fixed: turnedOver(fixed) },
    { ...joint, moving: turnedOver(moving) },
  ];
  if (!turned.some((other) => anyShares(other, [atHome]))) return { kind: 'not-known', ...files };
  const sides = [fixed, moving].map(sideOf);
  if (sides[0] === 'proud') return { kind: 'signs', file: fixed.file };
  if (sides[1] === 'proud') return { kind: 'signs', file: moving.file };
  return { kind: sides.every((side) => side === 'inward') ? 'inward' : 'signs-of-one', ...files };
}

/** On which side of its mating face all of a part's depths lie. */
function sideOf({ sections }: Casting): 'inward' | 'proud' | 'both' {
  const depths = sections.flatMap(({ depth }) => depth ?? []);
  if (depths.length === 0) return 'both';
  if (depths.every(({ fromMm }) => fromMm >= 0)) return 'inward';
  return depths.every(({ toMm }) => toMm <= 0) ? 'proud' : 'both';
}

const turnedOver = (casting: Casting): Casting => ({
  ...casting,
  sections: casting.sections.map((section): Section => ({ ...section, depth: negated(section.depth) })),
});

const negated = (depth: DepthRange | null): DepthRange | null =>
  depth && { fromMm: 0 - depth.toMm, toMm: 0 - depth.fromMm };
