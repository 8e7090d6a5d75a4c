import { treeOf } from '../clearance/trees.ts';
import type { Vec } from '../geometry/plane/vec.ts';
import { otherPart, type Part } from '../job/part.ts';
import type { Joint } from '../joint/joint.ts';
import { within } from './metal-about.ts';

/** Where the head of a bolt, or its nut, sits: on the back of a part through which its hole goes. */
export interface Seat {
  readonly part: Part;
  readonly at: Vec;
  readonly atMm: number;
}

/** Room about a hole for a bolt's head, or for what turns it, at home; mm. */
export interface HeadRoom {
  readonly acrossMm: number;
  /** The depth of the casting from which the bolt goes in or its nut sits. */
  readonly fromMm: number;
  readonly part: Part;
  readonly section: string;
  /** From the edge of what turns the bolt to the nearest metal; less than 0 where that stands in the way. */
  readonly gapMm: number;
  readonly errorMm: number;
}

/**
 * The metal nearest to a head or socket, so far across, that stands on the back of a casting, at home:
 * what of the casting itself stands farther back, and what of the other part comes there. Null where nothing does.
 */
export function headRoom(joint: Joint, { part, at, atMm }: Seat, acrossMm: number): HeadRoom | null {
  const other = otherPart(part);
  const beyond = { fromMm: atMm, toMm: Number.POSITIVE_INFINITY };
  // what lies behind one face is in front of the other
  const across = { fromMm: Number.NEGATIVE_INFINITY, toMm: -atMm };
  const standing = [
    ...joint[part].sections.map((section) => ({ part, section, reach: beyond })),
    ...joint[other].sections.map((section) => ({ part: other, section, reach: across })),
  ] as const;
  const rooms = standing
    .filter(
      ({ section: { depth }, reach }) => depth === null || (depth.fromMm < reach.toMm && depth.toMm > reach.fromMm),
    )
    .filter(({ section }) => section.loops.length > 0)
    .map(
      ({ part: of, section, reach: _ }): HeadRoom => ({
        acrossMm,
        fromMm: atMm,
        part: of,
        section: section.id,
        gapMm: -within(treeOf(section.loops), at).insideMm - acrossMm / 2,
        errorMm: section.traceErrorMm,
      }),
    );
  return rooms.reduce<HeadRoom | null>(
    (least, room) => (least !== null && least.gapMm <= room.gapMm ? least : room),
    null,
  );
}
