import type { Warning } from '../answers/check-answer.ts';
import { roundPoint6 } from '../geometry/plane/rounding.ts';
import type { Vec } from '../geometry/plane/vec.ts';

/** Every warning that dowelling up can give; the codes are part of the answer's format and stay as they are. */
export type JointWarningCode =
  | 'one-dowel-pair'
  | 'dowel-spacing'
  | 'dowel-spacing-measure-again'
  | 'hand-mirrored'
  | 'hand-cannot-tell'
  | 'bolt-does-not-line-up'
  | 'bolts-do-not-register'
  | 'dowels-do-not-register'
  | 'off-line-on-dowels'
  | 'off-line-on-shaft'
  | 'trace-error-assumed';

/** A warning of this room; `at` in the joint frame, mm. */
export const jointWarning = (code: JointWarningCode, text: string, at?: Vec): Warning =>
  at === undefined ? { code, text } : { code, text, at: roundPoint6(at) };
