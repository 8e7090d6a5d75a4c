import type { Joint } from '../../joint/joint.ts';
import type { CheckResult, State, StrayedResult, Verdict } from '../check-result.ts';
import { type Doubt, doubt } from './verify-doubt.ts';
import { heldToMm, roundingMm } from './verify-limits.ts';

/** How exactly a worst clearance that the result does not give is found again. */
const foundMm = 0.05;

interface PartMeasure {
  readonly state: State;
  readonly askedMm: number;
  readonly clearanceMm: number | null;
  readonly worstMm: number | null;
  /** How far `worstMm` may be off. */
  readonly worstWithinMm: number;
}

/** What verdict and `meetsClearance` say that does not follow; the worst clearances of rotating parts are as found. */
export function verdictDoubts(joint: Joint, check: CheckResult, rotatingWorstMm: readonly (number | null)[]): Doubt[] {
  const { homeMm, wayInMm, rotatingMm } = joint.fit.clearance;
  const { home, wayIn, rotating, wander } = check;
  const atRotating = (strayed: StrayedResult) => ({ ...strayed, askedMm: rotatingMm });
  const parts: PartMeasure[] = [
    { ...home, askedMm: homeMm, worstMm: home.worstClearanceMm, worstWithinMm: roundingMm },
    ...(wayIn ? [{ ...wayIn, askedMm: wayInMm, worstMm: wayIn.worstClearanceMm, worstWithinMm: roundingMm }] : []),
    ...rotating.map((r, i) => ({
      ...r,
      askedMm: rotatingMm,
      worstMm: rotatingWorstMm[i] ?? null,
      worstWithinMm: foundMm,
    })),
    ...(wander === null ? [] : [{ ...wander, askedMm: wayInMm }, ...wander.rotating.map(atRotating)]).map(
      (strayed) => ({
        ...strayed,
        worstMm: strayed.worstClearanceMm,
        worstWithinMm: roundingMm,
      }),
    ),
  ];
  if (check.reason !== null) return reasonDoubts(check);
  const verdicts = possibleVerdicts(parts);
  const meets = [roundingMm, -roundingMm].map((hair) => parts.every((part) => holds(part, part.clearanceMm, hair)));
  const doubts: Doubt[] = [];
  const unmeasured = home.clearanceMm === null && (wayIn === null || wayIn.clearanceMm === null);
  if (unmeasured && !joint.fit.nothingShares && check.verdict !== 'undecided') {
    doubts.push(doubt('verdict', 'joint', `The verdict is "${check.verdict}", but nothing was measured.`));
  }
  if (!verdicts.includes(check.verdict)) {
    const text = `The verdict is "${check.verdict}"; by its figures it would be "${verdicts.join('" or "')}".`;
    doubts.push(doubt('verdict', 'joint', text));
  }
  if (!meets.includes(check.meetsClearance)) {
    const text = `By its figures the clearance asked is ${check.meetsClearance ? 'not ' : ''}met.`;
    doubts.push(doubt('meets-clearance', 'joint', text));
  }
  return doubts;
}

/** Where nothing is judged nothing may be promised, and the result has to tell why. */
function reasonDoubts({ reason, verdict, meetsClearance, notices }: CheckResult): Doubt[] {
  const doubts: Doubt[] = [];
  if (verdict !== 'undecided')
    doubts.push(doubt('verdict', 'joint', `The verdict is "${verdict}", but nothing is judged ("${reason}").`));
  if (meetsClearance) doubts.push(doubt('meets-clearance', 'joint', 'Nothing is judged, so no clearance is met.'));
  if (!notices.some(({ code }) => code === reason))
    doubts.push(doubt('verdict', 'joint', `No notice tells why nothing is judged ("${reason}").`));
  return doubts;
}

/** More than one where a figure lies too near a limit to tell. */
function possibleVerdicts(parts: readonly PartMeasure[]): readonly Verdict[] {
  const states = parts.map(({ state }) => state);
  if (states.includes('fouls')) return ['fouls'];
  if (states.includes('undecided')) return ['undecided'];
  const verdictWith = (sign: 1 | -1): Verdict => {
    if (!parts.every((part) => holds(part, part.clearanceMm, sign * roundingMm))) return 'too-close';
    return parts.every((part) => holds(part, part.worstMm, sign * part.worstWithinMm)) ? 'goes' : 'should-go';
  };
  return [...new Set([verdictWith(1), verdictWith(-1)])];
}

const holds = ({ state, askedMm }: PartMeasure, mm: number | null, hairMm: number): boolean =>
  state !== 'fouls' && state !== 'undecided' && (mm === null || mm + hairMm >= askedMm - heldToMm);
