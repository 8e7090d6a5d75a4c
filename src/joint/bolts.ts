import { distance } from '../geometry/plane/vec.ts';
import type { HolePair } from '../job/job.ts';
import { boltAllowance } from '../trade/bolt-allowance.ts';
import type { JointNotice, PairNames } from './notices.ts';
import { boltHairMm } from './tolerances.ts';

/** How far a bolt is off its hole and how far it may be, mm. */
export interface Bolt extends PairNames {
  readonly offsetMm: number;
  /** Null where nothing is known of it; below nothing where the bolt is thicker than its hole. */
  readonly allowedMm: number | null;
  readonly linesUp: boolean | null;
}

/** Each bolt with both its holes in the joint frame at home. */
export const boltsOf = (pairs: readonly HolePair[]): Bolt[] => pairs.map(boltOf);

function boltOf(pair: HolePair): Bolt {
  const offsetMm = distance(pair.fixed.at, pair.moving.at);
  const allowedMm = boltAllowance(pair.fixed, pair.moving)?.mm ?? null;
  return {
    fixed: pair.fixed.id,
    moving: pair.moving.id,
    offsetMm,
    allowedMm,
    linesUp: allowedMm === null ? null : offsetMm <= allowedMm + boltHairMm,
  };
}

/** A notice for each bolt that does not line up, at its hole in the fixed part. */
export const boltNotices = (pairs: readonly HolePair[]): JointNotice[] =>
  pairs.flatMap((pair) => {
    const { linesUp, allowedMm, ...bolt } = boltOf(pair);
    if (linesUp !== false || allowedMm === null) return [];
    return [{ code: 'bolt-does-not-line-up', ...bolt, allowedMm, at: pair.fixed.at }];
  });
