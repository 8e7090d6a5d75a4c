import type { Foretold } from '../../clearance/foretold.ts';
import type { TravelCurve } from '../../clearance/travel-curve.ts';
import type { Forgiven } from '../../clearance/wander/forgiven.ts';
import type { DrillResult } from '../../drill/drill-result.ts';
import type { MarkingTable } from '../../markout/marking-row.ts';
import type { PlanResult } from '../../plan/plan-result.ts';
import type { WaysResult } from '../../ways/find-ways.ts';
import type { DrawInput } from '../fit/draw-input.ts';
import type { HeldViewer } from './held-viewer.ts';

/** A file the report rests on, by what its bytes hash to. */
export interface InputFile {
  readonly file: string;
  readonly bytes: number;
  /** Hexadecimal. */
  readonly sha256: string;
}

/** Everything a report says; it computes none of it. */
export interface ReportInput extends DrawInput {
  readonly plan: PlanResult;
  /** The marking-out table of each part that is cut. */
  readonly tables: readonly MarkingTable[];
  /** Null where only home was asked. */
  readonly curve: TravelCurve | null;
  /** The same once cut as planned; null where nothing is cut. */
  readonly curveAfter: TravelCurve | null;
  /** Every way in of turning and sliding; null where nobody asked. */
  readonly ways: WaysResult | null;
  /** How far one may stray from the way in; null where it touches, or only home was asked. */
  readonly forgives: Forgiven | null;
  readonly drill: DrillResult;
  /** Where it will stop before anything is cut. */
  readonly foretold: Foretold;
  readonly inputs: readonly InputFile[];
  /** As it is to be read, for instance `2026-03-01`. */
  readonly date: string;
  readonly version: string;
  /** Null where there is none to hold. */
  readonly viewer: HeldViewer | null;
}
