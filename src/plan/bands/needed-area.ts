import { union } from '../../geometry/polygons/polygon-engine.ts';
import { areaMm2 } from '../../geometry/polygons/polygons.ts';
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
    yield { step: section.id, done, of: sections.length };
    const beside = section.mayCut ? sections.filter((other) => other !== section) : [];
    const lacks = [...lacksOf({ joint, sweeps, beside }, section, bandsOf(joint, part, section))];
    sumMm2 += areaMm2(union(lacks.flatMap(({ needed }) => needed)));
  }
  return sumMm2;
}
