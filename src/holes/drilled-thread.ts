import type { Drill } from '../trade/inch-drills.ts';
import { shareOfBasicHeight, type ThreadData } from './thread-data.ts';

/** What a drill leaves to be tapped. */
export interface DrilledThread {
  readonly drill: Drill;
  /** Share of the basic thread's height, (D − drill) / 1.0825 P for a 60° thread; null for a taper thread. */
  readonly basicShare: number | null;
  /** Share as inch handbooks count it, (D − drill) / 1.299 P; null for pipe threads, which they do not count so. */
  readonly handbookShare: number | null;
  /** The hole against the limits of the minor diameter; null where there are none. */
  readonly limits: 'below' | 'within' | 'above' | null;
}

// drills are sold by the hundredth; a limit is met to a thousandth
const hairMm = 1e-3;

/** The thread that is tapped after a drill. */
export function drilledThread(thread: ThreadData, drill: Drill): DrilledThread {
  const { majorMm, pitchMm, system } = thread;
  const isSharp = system === 'metric' || system === 'unified';
  return {
    drill: { name: drill.name, diameterMm: drill.diameterMm },
    basicShare: system === 'taper-pipe' ? null : shareOfBasicHeight(thread, drill.diameterMm),
    handbookShare: isSharp ? Math.max(0, majorMm - drill.diameterMm) / (0.75 * Math.sqrt(3) * pitchMm) : null,
    limits: limitsMet(thread, drill.diameterMm),
  };
}

function limitsMet({ minorMm, largestMinorMm }: ThreadData, holeMm: number): DrilledThread['limits'] {
  if (largestMinorMm === null) return null;
  if (holeMm < minorMm - hairMm) return 'below';
  return holeMm > largestMinorMm + hairMm ? 'above' : 'within';
}

export interface DrillAtHand extends DrilledThread {
  /** `does`: within limits, or as good as the drill in the table. `loose`: less thread than it should be, `tight`: the tap may break. */
  readonly verdict: 'does' | 'loose' | 'tight';
}

/** Less of the basic thread's height than this is hardly a thread: common practice, no source. */
const looseShare = 0.6;
/** How far a drill may be off the one in the table where there are no limits to go by, mm: common practice. */
const asGoodMm = 0.15;

/**
 * The drill of a box to take for a thread: of those that do the one nearest to the table's, else the least of those
 * that are too large and leave a thread of six tenths, else the nearest. Null for an empty box.
 */
export function drillAtHand(thread: ThreadData, box: readonly Drill[]): DrillAtHand | null {
  const rank = { does: 0, loose: 1, tight: 2 } as const;
  const offMm = ({ drill }: DrilledThread): number => Math.abs(drill.diameterMm - thread.drill.diameterMm);
  const [best] = box
    .map((drill) => judged(thread, drilledThread(thread, drill)))
    .sort((a, b) => hopeless(a) - hopeless(b) || rank[a.verdict] - rank[b.verdict] || offMm(a) - offMm(b));
  return best ?? null;
}

const hopeless = ({ verdict, basicShare }: DrillAtHand): number =>
  verdict === 'loose' && (basicShare ?? 1) < looseShare ? 1 : 0;

function judged(thread: ThreadData, drilled: DrilledThread): DrillAtHand {
  const overMm = drilled.drill.diameterMm - thread.drill.diameterMm;
  if (drilled.limits === null) {
    if (Math.abs(overMm) <= asGoodMm) return { ...drilled, verdict: 'does' };
    return { ...drilled, verdict: overMm > 0 ? 'loose' : 'tight' };
  }
  // a handbook's drill may lie a hair over the limit
  const asGood = drilled.limits === 'above' && overMm <= hairMm;
  if (drilled.limits === 'within' || asGood) return { ...drilled, verdict: 'does' };
  return { ...drilled, verdict: drilled.limits === 'above' ? 'loose' : 'tight' };
}
