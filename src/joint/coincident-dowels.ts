import type { Finding } from '../files/finding.ts';
import { distance, type Vec } from '../geometry/plane/vec.ts';
import type { Fit, HolePair } from '../job/job.ts';
import { coincidentMm } from './tolerances.ts';

/** Dowel pairs that stand on an earlier pair, in either part: they would let any turn fit. */
export function coincidentDowels(fit: Pick<Fit, 'file' | 'dowels'>): Finding[] {
  return fit.dowels.flatMap((pair, i) => {
    const earlier = fit.dowels.slice(0, i).findIndex((other) => coincide(pair, other));
    if (earlier < 0) return [];
    const found = `the pair [${pair.fixed.id}, ${pair.moving.id}] stands where dowels[${earlier}] stands`;
    return [{ file: fit.file, at: `dowels[${i}]`, found, expected: 'dowel pairs at different places in both parts' }];
  });
}

const coincide = (a: HolePair, b: HolePair): boolean => near(a.fixed.at, b.fixed.at) || near(a.moving.at, b.moving.at);

const near = (a: Vec, b: Vec): boolean => distance(a, b) <= coincidentMm;
