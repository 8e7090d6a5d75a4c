import { round6, roundDown6, roundPoint6 } from '../geometry/plane/rounding.ts';
import type { Joint } from '../joint/joint.ts';
import type { RoomRange, RoomResult } from '../room/room-on-crank.ts';
import type { RoomAnswer } from './room-answer.ts';
import { roundOrNull } from './rounded.ts';

/** The room about the crank as JSON, the answer of `fettle room --json`: mm to 1e-6, radii and diameters rounded down. */
export const roomAnswer = (joint: Joint, room: RoomResult): RoomAnswer => ({
  format: 'fettle-room/1',
  title: joint.fit.title,
  reason: room.reason,
  rotatingMm: room.rotatingMm,
  homeOnly: room.homeOnly,
  ranges: room.ranges.map(rangeAnswer),
  worstRanges: room.worstRanges.map(rangeAnswer),
});

const rangeAnswer = ({ depth, radiusMm, limits }: RoomRange): RoomAnswer['ranges'][number] => ({
  depth: [roundOrNull(depth.fromMm), roundOrNull(depth.toMm)],
  radiusMm: radiusMm === null ? null : roundDown6(radiusMm),
  diameterMm: radiusMm === null ? null : roundDown6(2 * radiusMm),
  limits: limits.map(({ part, section, untraced, leg, at, where }) => ({
    part,
    section,
    untraced,
    leg,
    at: round6(at),
    where: where && roundPoint6(where),
  })),
});
