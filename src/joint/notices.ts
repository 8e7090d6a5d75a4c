import type { Vec } from '../geometry/plane/vec.ts';
import type { Casting } from '../job/casting.ts';

/** What is said of a drawing that may be read wrongly. */
export type Drawing = Pick<Casting, 'file' | 'viewedFrom' | 'units'>;

export const drawingOf = ({ file, viewedFrom, units }: Casting): Drawing => ({ file, viewedFrom, units });

/** Two holes that are paired, by their names. */
export interface PairNames {
  readonly fixed: string;
  readonly moving: string;
}

/** The likeliest cause of holes that miss one another. */
export type MissCause =
  /** Paired holes stand `factor` times as far apart in the file `large` as in `small`. */
  | {
      readonly kind: 'inches';
      readonly factor: number;
      readonly large: string;
      readonly small: string;
      readonly fixed: Drawing;
      readonly moving: Drawing;
    }
  | { readonly kind: 'paired-wrongly'; readonly instead: readonly PairNames[] }
  | {
      readonly kind: 'not-known';
      readonly fewDowels: boolean;
      readonly fixed: Drawing;
      readonly moving: Drawing;
    };

/** Two drawings that do not register, so that nothing is judged; lengths in mm. */
export type Refusal =
  | {
      readonly code: 'hand-mirrored';
      readonly asDrawnRmsMm: number;
      readonly mirroredRmsMm: number;
      readonly fixed: Drawing;
      readonly moving: Drawing;
      /** Pairs with which the hand would agree; empty where none stand out. */
      readonly instead: readonly PairNames[];
    }
  | {
      readonly code: 'dowels-do-not-register';
      readonly offMm: number;
      readonly limitMm: number;
      readonly cause: MissCause;
    }
  /** The bolt that misses by most, and how many of all do. */
  | (PairNames & {
      readonly code: 'bolts-do-not-register';
      readonly offsetMm: number;
      readonly limitMm: number;
      readonly missing: number;
      readonly of: number;
      readonly cause: MissCause;
      readonly at: Vec;
    });

/**
 * Everything that dowelling up can have to say, in facts: lengths in mm, `at` in the joint frame. The codes are part of
 * the answer's format and stay as they are.
 */
export type JointNotice =
  | Refusal
  | (PairNames & { readonly code: 'one-dowel-pair' })
  /** Moving less fixed spacing. */
  | { readonly code: 'dowel-spacing' | 'dowel-spacing-measure-again'; readonly spacingErrorMm: number }
  | { readonly code: 'hand-cannot-tell'; readonly why: 'too-few' | 'fit-both-ways' }
  | (PairNames & {
      readonly code: 'bolt-does-not-line-up';
      readonly offsetMm: number;
      /** Below nothing where the bolt is thicker than its hole. */
      readonly allowedMm: number;
      readonly at: Vec;
    })
  /** `leg` counts from 1; `standOffMm` is its lowest. */
  | {
      readonly code: 'off-line-on-dowels';
      readonly leg: number;
      readonly standOffMm: number;
      readonly proudMm: number;
    }
  | {
      readonly code: 'off-line-on-shaft';
      readonly leg: number;
      readonly standOffMm: number;
      readonly engagesAtMm: number;
    }
  | {
      readonly code: 'trace-error-assumed';
      readonly part: string;
      readonly sections: readonly string[];
      readonly traceErrorMm: number;
    };
