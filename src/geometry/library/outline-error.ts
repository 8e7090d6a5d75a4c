import type { FaultKind } from '../plane/loop-faults.ts';
import type { Point } from './point.ts';

/** One thing that keeps outlines from being a solid. Outlines and vertices count from 0. */
export interface OutlineFault {
  readonly kind: 'no-outline' | 'malformed' | 'too-far' | FaultKind;
  readonly outline: number;
  /** The outline it is at odds with; `outline` itself where it is at odds with itself. */
  readonly otherOutline: number;
  /** The vertex at fault; null where an edge, or the outline as a whole, is. */
  readonly vertex: number | null;
  /** Where, in mm; null where there is no such place. */
  readonly at: Point | null;
}

/**
 * Outlines that are no solid: what is wrong with them, all at once, as data; of places where they meet, the first
 * twenty. The message tells the first.
 */
export class OutlineError extends Error {
  override readonly name = 'OutlineError';
  readonly faults: readonly OutlineFault[];

  constructor(faults: readonly OutlineFault[]) {
    const [first] = faults;
    super(first === undefined ? 'no fault' : wordsOf(first));
    this.faults = faults;
  }
}

function wordsOf({ kind, outline, otherOutline, vertex, at }: OutlineFault): string {
  const where = vertex === null ? `outline ${outline}` : `outline ${outline}, vertex ${vertex}`;
  const other = otherOutline === outline ? 'itself' : `outline ${otherOutline}`;
  return `${where} ${faultWords[kind].replace('OTHER', other)}${at === null ? '' : ` at [${at.join(', ')}]`}`;
}

const faultWords: Readonly<Record<OutlineFault['kind'], string>> = {
  'no-outline': 'is missing: a solid has one or more',
  malformed: 'is not written as [[x, y], [x, y, bulge], …] or { circle: [x, y], radius }, all of them numbers',
  'too-far': 'reaches beyond 1e5 mm from the origin',
  'closed-twice': 'comes to its first vertex again, but closes of itself',
  'zero-length-edge': 'is the vertex before it again',
  'repeated-vertex': 'comes to a vertex more than once',
  'too-few-vertices': 'has too few vertices: three or more, or two with an arc',
  'no-area': 'encloses no area',
  crosses: 'crosses OTHER',
  touches: 'touches OTHER',
  overlaps: 'runs along OTHER',
  'too-tangled': 'is too tangled to check',
};
