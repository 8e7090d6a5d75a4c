import type { ReasonCode } from '../../clearance/notices.ts';
import type { Cutter, Fit } from '../../job/job.ts';
import type { SteppedBar } from '../../trade/fillet-stress.ts';
import type { Source } from '../../trade/sourced.ts';
import type { CutterResult } from '../cutter/cutter-result.ts';
import type { Hindrance } from '../hindrances.ts';
import type { LeastWall } from './least-wall.ts';

/** One of the cuts to choose among, as it is planned and judged; mm. */
export interface Choice {
  readonly holds: boolean;
  readonly cutsNothing: boolean;
  /** Null where a section that is cut has no depth, the mass also without a material. */
  readonly volumeMm3: number | null;
  readonly massG: number | null;
  /** Null where the cut comes near no hole or hollow, and no other wall was asked for or read. */
  readonly leastWall: LeastWall | null;
  /** What stands against it; empty where it holds. */
  readonly against: readonly Hindrance[];
}

/** The job with another part cut. */
export interface PartChoice extends Choice {
  readonly cut: Fit['cut'];
}

/** The job cut with another cutter. */
export interface CutterChoice extends Choice {
  readonly radiusMm: number;
  /** Metal beyond the least, as a share of that; null where it is not known. */
  readonly moreThanLeast: number | null;
  /** The least radius of the inward corners of its edge; null where it has none. */
  readonly leastFilletMm: number | null;
  /** Fillets left standing where metal ought to go. */
  readonly leaves: CutterResult['ends'];
  /** Where the cutter does not get in from the side. */
  readonly narrow: CutterResult['narrow'];
  /** Stress of a fillet of the cutter's radius beside one of the smallest, in the bar of reference; null where the formula does not reach. */
  readonly stressRatio: number | null;
}

/** Which part to cut, and with which cutter. */
export interface Choices {
  /** Why nothing is planned; null where something is, or nothing need be. */
  readonly reason: ReasonCode | null;
  /** Cut with the cutter of the fit. */
  readonly parts: readonly PartChoice[];
  /** Of the cut that the fit asks for, the smallest first; none where it takes nothing. */
  readonly cutters: readonly CutterChoice[];
  readonly nose: Cutter['nose'];
  /** Whether the fit lists the radii, or they are those in common use. */
  readonly areListed: boolean;
  /** The largest radius that holds and takes hardly more than the least that holds; null where that cannot be said. */
  readonly kindestMm: number | null;
  readonly reference: FilletReference;
}

/** What ratios of stress are of: a stepped bar in tension, and the radii for which its formula holds; mm. */
export interface FilletReference {
  readonly bar: SteppedBar;
  readonly covers: { readonly leastRadiusMm: number; readonly mostRadiusMm: number };
  readonly source: Source;
}
