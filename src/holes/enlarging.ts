import { metricThreads } from '../trade/metric-threads.ts';
import { type InsertHole, insertHole } from '../trade/wire-inserts.ts';
import { threadNamed } from './named-thread.ts';
import { shareOfBasicHeight, type ThreadData } from './thread-data.ts';
import { keepFor, type MetalThere, wallBeside } from './wall.ts';

/** What becomes of an old thread under a new drill; mm. */
export interface OldThread {
  /** How deep its grooves still stand in the wall of the new hole. */
  readonly grooveMm: number;
  /** Share of the old thread's height that the drill takes off: 0 where the drill is no larger than the hole there is. */
  readonly goneShare: number;
  /** Share of the new thread's height over which the old grooves have taken its metal. */
  readonly ofNewShare: number;
  readonly samePitch: boolean;
}

/** A thread of the tables that leaves wall enough where the old one is. */
export interface SizeThatFits {
  readonly thread: string;
  readonly wallMm: number;
  readonly drillMm: number;
  readonly old: OldThread;
}

/** A wire insert in place of the larger thread, the bolt staying as it was. */
export interface InsertResult {
  readonly carries: string;
  readonly hole: InsertHole;
  readonly wallMm: number | null;
  /** Whether it leaves the wall that is to be kept; null where nothing is known of the metal. */
  readonly leavesWall: boolean | null;
  /** Why it is the better way: it takes less metal, the wanted thread leaves too thin a wall, or the metal is soft. */
  readonly betterFor: readonly ('less-metal' | 'wall' | 'soft-metal')[];
}

export interface EnlargingResult {
  readonly was: ThreadData;
  readonly old: OldThread;
  /** Nearest first, twelve at most; null where nothing is known of the metal, or the tables end. */
  readonly sizes: readonly SizeThatFits[] | null;
  /** Null for pipe threads. */
  readonly insert: InsertResult | null;
}

const mostSizes = 12;

/** What is left of a thread `was` where `thread` is drilled for by `drillMm`. */
export function oldThreadUnder(
  was: ThreadData,
  thread: Pick<ThreadData, 'majorMm' | 'pitchMm'>,
  drillMm: number,
): OldThread {
  const grooveMm = Math.max(0, (was.majorMm - drillMm) / 2);
  return {
    grooveMm,
    goneShare: Math.min(1, Math.max(0, 1 - shareOfBasicHeight(was, drillMm))),
    ofNewShare: Math.min(1, grooveMm / ((thread.majorMm - drillMm) / 2)),
    samePitch: Math.abs(was.pitchMm - thread.pitchMm) < 1e-6,
  };
}

/** What to know before the thread `was` is made into a larger one. */
export function enlargingOf(
  thread: ThreadData,
  was: ThreadData,
  metal: MetalThere,
  material: string | null,
): EnlargingResult {
  return {
    was,
    old: oldThreadUnder(was, thread, thread.drill.diameterMm),
    sizes: sizesThatFit(was, metal),
    insert: insertInstead(thread, was, metal, material),
  };
}

function sizesThatFit(was: ThreadData, metal: MetalThere): SizeThatFits[] | null {
  if (wallBeside(metal, was, was.majorMm) === null) return null;
  const larger = metricThreads
    .flatMap(({ majorMm, pitchMm }) => threadNamed(`M${majorMm}x${pitchMm}`) ?? [])
    .filter(({ majorMm, drill }) => majorMm > was.majorMm && drill.diameterMm > was.minorMm);
  if (larger.length === 0) return null;
  return larger
    .flatMap((thread) => {
      const wallMm = wallBeside(metal, was, thread.majorMm) ?? 0;
      if (wallMm < keepFor(metal, thread.majorMm) - 1e-9) return [];
      const drillMm = thread.drill.diameterMm;
      return [{ thread: thread.name, wallMm, drillMm, old: oldThreadUnder(was, thread, drillMm) }];
    })
    .slice(0, mostSizes);
}

function insertInstead(
  thread: ThreadData,
  was: ThreadData,
  metal: MetalThere,
  material: string | null,
): InsertResult | null {
  if (was.stressAreaMm2 === null) return null;
  const hole = insertHole(was.majorMm, was.pitchMm);
  const wallMm = wallBeside(metal, was, hole.majorMm);
  // the wall of an insert is judged by its bolt, as the wall of a thread is
  const leavesWall = wallMm === null ? null : wallMm >= keepFor(metal, was.majorMm) - 1e-9;
  const wantedMm = wallBeside(metal, was, thread.majorMm);
  const wantedFails = wantedMm !== null && wantedMm < keepFor(metal, thread.majorMm) - 1e-9;
  const takesLess = hole.majorMm < thread.majorMm;
  return {
    carries: was.name,
    hole,
    wallMm,
    leavesWall,
    betterFor:
      leavesWall === false
        ? []
        : [
            ...(takesLess ? (['less-metal'] as const) : []),
            ...(wantedFails ? (['wall'] as const) : []),
            ...(material === 'aluminium' ? (['soft-metal'] as const) : []),
          ],
  };
}
