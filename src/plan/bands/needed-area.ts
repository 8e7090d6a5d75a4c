import { union } from '../../geometry/polygons/polygon-engine.ts';
import { areaMm2, type Polygon } from '../../geometry/polygons/polygons.ts';
import type { Progress } from '../../geometry/progress.ts';
import type { Part } from '../../job/part.ts';
import type { Joint } from '../../joint/joint.ts';
import { lacksOf } from './band-need.ts';
import { bandsOf } from './bands.ts';
import { sweepsWithin } from './sweeps.ts';
import { toleranceMm } from './tolerance.ts';

/**
 * What the clearance alone takes of each section of a part, offered or not, as seen along the depth, mm²: no cutter, no
 * lines, no walls, and nothing judged, so that many ways in can be compared.
 */
export function* neededMm2(joint: Joint, part: Part): Generator<Progress, number> {
  const { sections } = joint[part];
  const sweeps = sweepsWithin(toleranceMm);
  let sumMm2 = 0;
  for (const [done, section] of sections.entries()) {
    const progress = { step: section.id, done, of: sections.length };
    yield progress;
    const beside = section.mayCut ? sections.filter((other) => other !== section) : [];
    const needed: Polygon[] = [];
    for (const lack of lacksOf({ joint, sweeps, beside }, section, bandsOf(joint, part, section))) {
      yield progress;
      needed.push(...(lack?.needed ?? []));
    }
    sumMm2 += areaMm2(union(needed));
  }
  return sumMm2;
}
