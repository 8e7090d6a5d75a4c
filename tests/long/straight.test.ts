import { expect, it } from 'vitest';
import { distance, vec } from '../../src/geometry/plane/vec.ts';
import { answerTo } from '../support/plan-answer.ts';
import { Random } from '../support/random.ts';
import { randomFit } from '../support/random-fit.ts';
import { edgesWithin, expectStraight, flatCutter } from '../support/straight-edges.ts';

it('straight edges are of flats of 10 mm and arcs of the cutter’s radius in fits made at random, but for the few named', () => {
  const seen = { edges: 0, asTheyWere: 0, flats: 0 };
  for (let seed = 0; seed < 300; seed++) {
    const random = new Random(seed);
    const made = randomFit(random);
    const radiusMm = [null, 1, 3, 6, 12][seed % 5] ?? null;
    const cutter = radiusMm === null ? null : flatCutter(radiusMm);
    const joint = { ...made, fit: { ...made.fit, cutter, straight: true } };
    const answer = answerTo(joint);
    const asItWas = answer.straight?.asItWas ?? [];
    seen.asTheyWere += asItWas.length;
    for (const { id, bands } of answer.sections) {
      const outline = joint.fixed.sections.find((section) => section.id === id)?.loops ?? [];
      for (const edge of bands.flatMap(({ loops }) => edgesWithin(loops, outline))) {
        if (asItWas.some(({ at: [x, y] }) => edge.some((p) => distance(p, vec(x, y)) < 0.01))) continue;
        seen.edges++;
        seen.flats += expectStraight(edge, answer.straight?.leastArcRadiusMm as number, `seed ${seed}`);
      }
    }
  }
  expect(seen.edges).toBeGreaterThan(200);
  expect(seen.asTheyWere).toBeLessThan(seen.edges / 50);
});
