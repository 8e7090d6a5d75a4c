import { describe, expect, test } from 'vitest';
import { compareCastings } from '../../src/compare/compare-castings.ts';
import { layTogether } from '../../src/compare/lay-together.ts';
import { pointOnEdge } from '../../src/geometry/plane/edge.ts';
import { edgesOfRegion, moveRegion } from '../../src/geometry/plane/loop.ts';
import { rigid } from '../../src/geometry/plane/rigid.ts';
import { vec } from '../../src/geometry/plane/vec.ts';
import { drain } from '../../src/geometry/progress.ts';
import { castingOf, dowel } from '../support/jobs.ts';
import { boundaryDistance, contains, solidOf } from '../support/oracles/solid.ts';
import { Random } from '../support/random.ts';
import { randomRegion } from '../support/random-outlines.ts';

// Reference: points thrown into both outlines, each measured by itself, edge by edge.
const pairs = 120;
const points = 200;
const firstSeed = 15_500_000;
/** Arcs are taken a thousandth to the safe side, and the polygon engine snaps; mm. */
const arcsMm = 3e-3;

const holes = [dowel('D1', [-100, 0]), dowel('D2', [100, 0])];

function pairOf(seed: number) {
  const random = new Random(seed);
  const known = randomRegion(random, 60);
  const nudge = rigid(random.between(-0.1, 0.1), vec(random.between(-4, 4), random.between(-4, 4)));
  const other = random.chance(0.5) ? moveRegion(known, nudge) : randomRegion(random, 60);
  const errorsMm = [random.pick([0, 0.3, 1]), random.pick([0, 0.5])] as const;
  const section = { id: 'rib', depth: [0, 20] as const };
  const [a, b] = ([known, other] as const).map((loops, i) =>
    castingOf({ name: `part ${i}`, holes, sections: [{ ...section, loops, traceErrorMm: errorsMm[i] as number }] }),
  );
  if (a === undefined || b === undefined) throw new Error('no pair');
  const joint = layTogether(a, b, null);
  if (!joint.ok) throw new Error('not laid');
  const errorMm = errorsMm[0] + errorsMm[1];
  return {
    seed,
    random,
    known: solidOf(known),
    other: solidOf(other),
    regions: [known, other] as const,
    errorMm,
    result: drain(compareCastings(joint.value)),
  };
}

describe(`${pairs} random pairs of castings`, () => {
  const seen = Array.from({ length: pairs }, (_, i) => pairOf(firstSeed + i));

  test('hide no metal: every point that stands out by more than the errors is told, and no less proud', () => {
    const missed = seen.flatMap(({ seed, random, known, other, errorMm, result }) => {
      const proudest = Math.max(0, ...result.beyond.map(({ proudMm }) => proudMm ?? Number.POSITIVE_INFINITY));
      return Array.from({ length: points }, () => vec(random.between(-70, 70), random.between(-70, 70)))
        .filter((p) => contains(other, p) && !contains(known, p))
        .map((p) => boundaryDistance(known, p))
        .filter((mm) => mm > errorMm + 0.02 && mm > proudest + arcsMm)
        .map((mm) => ({ seed, mm, proudest }));
    });
    expect(missed).toEqual([]);
  });

  test('tell nothing that is not so: where a piece stands proudest there is metal of the one, and as far from the other', () => {
    const wrong = seen.flatMap(({ seed, known, other, errorMm, result }) =>
      [...result.beyond, ...result.within]
        .filter(({ at, proudMm }) => {
          const isMetal = contains(other, at) || boundaryDistance(other, at) <= arcsMm;
          return !isMetal || Math.abs(boundaryDistance(known, at) - (proudMm ?? 0)) > arcsMm;
        })
        .map((standing) => ({ seed, errorMm, standing })),
    );
    expect(wrong).toEqual([]);
    expect(seen.some(({ result }) => result.beyond.length > 0)).toBe(true);
    expect(seen.some(({ result }) => result.beyond.length === 0)).toBe(true);
  });

  test('are beyond by more than the errors, or within them', () => {
    const wrong = seen.filter(
      ({ errorMm, result: { beyond, within } }) =>
        beyond.some(({ proudMm }) => (proudMm ?? 0) < errorMm - arcsMm) ||
        within.some(({ proudMm }) => (proudMm ?? 0) > errorMm + 0.02),
    );
    expect(wrong.map(({ seed }) => seed)).toEqual([]);
  });

  test('agree no better than any place of their outlines does, and as ill as one', () => {
    const wrong = seen.filter(({ known, other, regions: [a, b], result: { agreement } }) => {
      const off = [
        ...placesOf(a).map((p) => boundaryDistance(other, p)),
        ...placesOf(b).map((p) => boundaryDistance(known, p)),
      ];
      const largest = Math.max(...off);
      const told = agreement?.largestMm ?? 0;
      return largest > told + arcsMm || told > largest + 1 || (agreement?.mostMm ?? 0) > told;
    });
    expect(wrong.map(({ seed }) => seed)).toEqual([]);
  });
});

const placesOf = (region: Parameters<typeof edgesOfRegion>[0]) =>
  edgesOfRegion(region).flatMap((edge) => Array.from({ length: 40 }, (_, i) => pointOnEdge(edge, i / 40)));
