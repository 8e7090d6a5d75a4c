import type { CheckResult, Clearance } from '../clearance/check-result.ts';
import type { Joint } from '../joint/joint.ts';
import { heldToMm } from './units.ts';

/** The command that looks at every way in, where nothing but the way in fails and it can tell; else nothing. */
export const otherWayCommands = (joint: Joint, check: CheckResult): string[] =>
  onlyWayInFails(joint, check) && hasDepths(joint)
    ? [`Whether any way in needs no cutting: fettle ways ${joint.fit.file}`]
    : [];

/** Whether the clearance asked is kept at home, and shown not to be on the way there. */
function onlyWayInFails(
  { fit: { clearance } }: Joint,
  { reason, home, wayIn, rotating, wander }: CheckResult,
): boolean {
  if (reason !== null || wayIn === null) return false;
  if (wander?.decides) return true;
  const turning = (atHome: boolean): boolean[] =>
    rotating.filter(({ instant }) => (instant === null) === atHome).map((part) => keeps(part, clearance.rotatingMm));
  const isHomeKept = [keeps(home, clearance.homeMm), ...turning(true)].every((kept) => kept);
  const isWayKept = [keeps(wayIn, clearance.wayInMm), ...turning(false)].every((kept) => kept);
  return isHomeKept && !isWayKept && wayIn.state !== 'undecided';
}

const keeps = ({ state, clearanceMm }: Pick<Clearance, 'state' | 'clearanceMm'>, askedMm: number): boolean =>
  state !== 'fouls' && state !== 'undecided' && (clearanceMm === null || clearanceMm >= askedMm - heldToMm);

/** Metal without a depth may be met at every stand-off, of which nothing can be told. */
const hasDepths = ({ fixed, moving, rotating }: Joint): boolean =>
  [fixed, moving, ...rotating].every(({ sections }) => sections.every(({ depth }) => depth !== null));
