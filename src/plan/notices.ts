import type { CheckNotice } from '../clearance/notices.ts';
import type { WhyAsItWas } from '../geometry/cutting/straight-edge.ts';
import type { Vec } from '../geometry/plane/vec.ts';

/** What a builder must know of a plan that its figures do not tell; lengths in mm, places in the joint frame. */
export type PlanNotice = CutNotice | CutterNotice | StraightNotice | CheckNotice;

/**
 * What a cut does: it only makes things touch, takes a great part of the casting (`share` of its largest section), or
 * goes through a sealing face or near a hole of unknown size.
 */
export type CutNotice =
  | { readonly code: 'plans-a-touch' }
  | { readonly code: 'takes-a-great-part'; readonly section: string; readonly areaMm2: number; readonly share: number }
  | { readonly code: 'cuts-mating-face'; readonly section: string; readonly at: Vec }
  | { readonly code: 'hole-not-guarded'; readonly hole: string; readonly at: Vec };

/** A fillet that a cutter leaves in a section, `atMm` from the face. */
interface FilletNotice {
  readonly section: string;
  readonly atMm: number;
  readonly heightMm: number;
  readonly reachMm: number;
  readonly at: Vec;
}

/** What a cutter leaves behind, cannot get at, or was not asked about. */
export type CutterNotice =
  | (FilletNotice & { readonly code: 'cutter-fillet-left' })
  /** `against` is null where no one section keeps it out. */
  | (FilletNotice & { readonly code: 'cutter-fillet-against'; readonly against: string | null })
  | {
      readonly code: 'cutter-cannot-enter';
      readonly section: string;
      readonly radiusMm: number;
      readonly gapMm: number;
      readonly at: Vec;
    }
  | { readonly code: 'cutter-covered'; readonly section: string; readonly by: string; readonly at: Vec };

/** Where the edge of a cut is left as it was, though a straight one was asked for. */
export interface StraightNotice {
  readonly code: 'edge-not-straight';
  readonly section: string;
  readonly why: WhyAsItWas;
  readonly at: Vec;
}
