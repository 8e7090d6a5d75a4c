import { regionAreaMm2, regionOverlapAreaMm2 } from '../geometry/polygons/region-measures.ts';
import type { Section } from '../job/casting.ts';
import type { Joint } from '../joint/joint.ts';
import type { Measure } from './measure.ts';
import type { CheckNotice } from './notices.ts';
import { atHome, passings } from './passings.ts';
import type { RotatingMeasure } from './rotating.ts';

/** What is to be said of sections as they are drawn and measured. */
export function sectionNotices(
  joint: Joint,
  home: Measure,
  wayIn: Measure | null,
  rotating: readonly RotatingMeasure[],
): CheckNotice[] {
  return [
    ...overlapNotices(joint),
    ...untracedNotice([home, ...(wayIn ? [wayIn] : []), ...rotating.map(({ measure }) => measure)]),
    ...rotatingNotices(rotating),
    ...tiltNotice(joint),
  ];
}

function tiltNotice({ fit: { wander }, moving }: Joint): CheckNotice[] {
  const sections = moving.sections.filter(({ depth }) => depth === null).map(({ id }) => id);
  return wander === null || wander.tiltRad === 0 || sections.length === 0
    ? []
    : [{ code: 'tilt-needs-depths', sections }];
}

/** Two sections without depth that lie largely over one another were likely meant to have depths. */
const overlapNotices = ({ fixed, moving }: Joint): CheckNotice[] =>
  [...passings({ fixed: fixed.sections, moving: moving.sections }, [atHome])]
    .filter(({ fixed: f, moving: m }) => f.depth === null && m.depth === null && overlapShare(f, m) > 0.5)
    .map(({ fixed: f, moving: m }) => ({
      code: 'sections-without-depth-overlap',
      fixedSection: f.id,
      movingSection: m.id,
    }));

const overlapShare = (f: Section, m: Section): number =>
  regionOverlapAreaMm2(f.loops, m.loops) / Math.min(regionAreaMm2(f.loops), regionAreaMm2(m.loops));

function untracedNotice(measures: readonly Measure[]): CheckNotice[] {
  const blind = measures.find(
    ({ decisive }) => decisive !== null && (decisive.fixed.untraced || decisive.moving.untraced),
  );
  if (!blind?.decisive) return [];
  const { fixed, moving } = blind.decisive;
  const [section, side] = fixed.untraced ? ([moving.name, 'fixed'] as const) : ([fixed.name, 'moving'] as const);
  return [{ code: 'not-traced-here', section, side }];
}

/** Common practice, no source: under 3 mm a rotating part wants a second look. */
const closeRotatingMm = 3;

const rotatingNotices = (rotating: readonly RotatingMeasure[]): CheckNotice[] =>
  rotating.flatMap(({ result: { part, against, state, clearanceMm } }) =>
    state === 'clear' && clearanceMm !== null && clearanceMm < closeRotatingMm
      ? [{ code: 'rotating-close', part, against, clearanceMm, limitMm: closeRotatingMm }]
      : [],
  );
