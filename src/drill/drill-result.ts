import type { ReasonCode } from '../clearance/notices.ts';
import { reasonOf } from '../clearance/reasons.ts';
import { sizeReason } from '../clearance/size-reason.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import type { Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import type { PlanResult } from '../plan/plan-result.ts';
import type { DrillRules } from './hole-metal.ts';
import { type DrillJoint, type JudgedHole, plannedHoles } from './planned-holes.ts';
import { type Transfer, transferred } from './transfer.ts';

/** Two neighbouring bolts on the way round the axis, with the most between them. */
export interface Stretch {
  readonly from: string;
  readonly to: string;
  readonly mm: number;
  readonly rad: number;
}

/** The bolts that hold the two parts together, as information: it approves nothing. */
export interface BoltsLeft {
  /** Pairs of the fit that line up, or of which nothing tells that they do not. */
  readonly paired: number;
  /** Holes that meet one of the other part though nobody paired them. */
  readonly met: number;
  /** Marked on the other part, where there is metal for them. */
  readonly marked: number;
  /** Null with fewer than two. */
  readonly longest: Stretch | null;
}

export interface DrillResult {
  /** Why nothing is carried from one part to the other; null where it is. */
  readonly refusal: ReasonCode | 'too-few-dowels' | null;
  readonly rules: DrillRules;
  /** Whether the paired holes show that neither drawing is mirrored: else every hole may be carried to the wrong side. */
  readonly handIsShown: boolean;
  /** Whether holes are judged in the metal that the planned cut leaves. */
  readonly isCut: boolean;
  readonly planned: readonly JudgedHole[];
  readonly transfer: Transfer;
  readonly bolts: BoltsLeft;
}

/** Whether there is anything to drill. */
export const isAnyToDrill = ({ planned, transfer }: DrillResult): boolean =>
  planned.length + transfer.marked.length > 0;

/** Whether there is metal for the holes to be drilled, and where the bolt holes of one part come on the other. */
export function drillResult(joint: Joint, plan: PlanResult | null, rules: DrillRules): DrillResult {
  const told = afterCut(joint, plan);
  const refusal = refusalOf(joint);
  const transfer = refusal === null ? transferred(told, rules) : { marked: [], met: [] };
  return {
    refusal,
    rules,
    handIsShown: joint.dowelUp.hand === 'agrees',
    isCut: told.joint !== joint,
    planned: plannedHoles(told, rules),
    transfer,
    bolts: refusal === null ? boltsLeft(joint, transfer) : { paired: 0, met: 0, marked: 0, longest: null },
  };
}

/** What does not register, or is drawn to another scale, is carried nowhere; nor what lies as it likes about one dowel. */
const refusalOf = (joint: Joint): DrillResult['refusal'] =>
  reasonOf(joint, sizeReason(joint)) ?? (joint.fit.dowels.length < 2 ? 'too-few-dowels' : null);

/** The joint with the planned cut made; a plan that was refused cuts nothing. */
function afterCut(joint: Joint, plan: PlanResult | null): DrillJoint {
  const cut = (part: Part): string[] =>
    (plan?.cuts ?? []).filter((one) => one.part === part).flatMap(({ sections }) => sections.map(({ id }) => id));
  const both = { fixed: cut('fixed'), moving: cut('moving') };
  const isCut = plan !== null && plan.reason === null && both.fixed.length + both.moving.length > 0;
  if (!isCut) return { joint, cut: { fixed: [], moving: [] } };
  const after = (part: Part) => plan.cuts.find((one) => one.part === part)?.after ?? joint[part];
  return { joint: { ...joint, fixed: after('fixed'), moving: after('moving') }, cut: both };
}

interface Station {
  readonly name: string;
  readonly at: Vec;
}

function boltsLeft({ fit, bolts, fixed, moving }: Joint, { marked, met }: Transfer): BoltsLeft {
  const paired = fit.bolts
    .filter((_, i) => bolts[i]?.linesUp !== false)
    .map(({ fixed: f }) => ({ name: f.id, at: f.at }));
  const standing = marked
    .filter(({ verdict }) => verdict === 'does' || verdict === 'as-traced')
    .map(({ hole }) => ({ name: hole.id, at: hole.at }));
  const holesOf = { fixed: fixed.holes, moving: moving.holes };
  const metThere = met.flatMap(({ of, hole: id }): Station[] => {
    const hole = holesOf[of].find((one) => one.id === id);
    return hole === undefined ? [] : [{ name: id, at: hole.at }];
  });
  return {
    paired: paired.length,
    met: metThere.length,
    marked: standing.length,
    longest: longestOf([...paired, ...metThere, ...standing]),
  };
}

function longestOf(stations: readonly Station[]): Stretch | null {
  if (stations.length < 2) return null;
  const angle = ({ at }: Station): number => Math.atan2(at.y, at.x);
  const round = stations.toSorted((a, b) => angle(a) - angle(b));
  const stretches = round.map((from, i): Stretch => {
    const to = round[(i + 1) % round.length] as Station;
    const rad = angle(to) - angle(from) + (i + 1 === round.length ? 2 * Math.PI : 0);
    return { from: from.name, to: to.name, mm: Math.hypot(to.at.x - from.at.x, to.at.y - from.at.y), rad };
  });
  return stretches.reduce((longest, stretch) => (stretch.mm > longest.mm ? stretch : longest));
}
