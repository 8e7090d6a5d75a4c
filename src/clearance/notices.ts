import type { Part } from '../job/part.ts';
import type { Drawing, JointNotice, Refusal } from '../joint/notices.ts';

/** Two sections by name, of the fixed and of the moving part. */
export interface SectionPair {
  readonly fixedSection: string;
  readonly movingSection: string;
}

/** What signs of depths have to do with it that no sections share any. */
export type LikelyDepths =
  /** The sign of all depths of one of the files is wrong; `inward`: the moving part reaches past its face. */
  | { readonly kind: 'signs'; readonly file: string }
  | { readonly kind: 'inward'; readonly fixed: string; readonly moving: string }
  /** With the signs of one of the files turned round sections would share depth. */
  | { readonly kind: 'signs-of-one'; readonly fixed: string; readonly moving: string }
  | { readonly kind: 'not-known'; readonly fixed: string; readonly moving: string };

/** What to do where the way in sets out in shared depth. */
export type StartRemedy =
  | { readonly kind: 'signs'; readonly file: string }
  /** These have no depth, so that they reach through every one. */
  | { readonly kind: 'state-depths'; readonly sections: readonly string[] }
  | { readonly kind: 'farther-out' };

/** What tells that nothing is known well enough to be judged; lengths in mm. */
export type ReasonNotice =
  | Refusal
  /** `factor`: how many times the size of the file `small` the file `large` is. */
  | {
      readonly code: 'sizes-differ';
      readonly factor: number;
      readonly large: string;
      readonly small: string;
      readonly fixed: Drawing;
      readonly moving: Drawing;
    }
  | { readonly code: 'never-shares-depth' | 'home-shares-nothing'; readonly likely: LikelyDepths }
  | (SectionPair & { readonly code: 'starts-in-shared-depth'; readonly remedy: StartRemedy })
  | { readonly code: 'never-near'; readonly leastMm: number; readonly fewDowels: boolean };

/** Why nothing is judged. */
export type ReasonCode = ReasonNotice['code'];

/** Everything a check can have to say beyond its figures, in facts; the codes are part of the answer's format. */
export type CheckNotice =
  | JointNotice
  | ReasonNotice
  | (SectionPair & { readonly code: 'inside-other-metal' | 'sections-without-depth-overlap' })
  /** `section` comes to where nobody traced the part `side`. */
  | { readonly code: 'not-traced-here'; readonly section: string; readonly side: Part }
  /** Rocked about the face, metal that reaches through every depth may come anywhere. */
  | { readonly code: 'tilt-needs-depths'; readonly sections: readonly string[] }
  | {
      readonly code: 'rotating-close';
      readonly part: string;
      readonly against: Part;
      readonly clearanceMm: number;
      readonly limitMm: number;
    };
