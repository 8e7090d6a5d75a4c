import { describe, expect, it } from 'vitest';
import { type GrindAnswer, grindAnswerSchema } from '../../../src/answers/grind-answer.ts';
import { straightened } from '../../../src/geometry/cutting/straight-edge.ts';
import { circleLoop, polygonLoop } from '../../../src/geometry/plane/loop.ts';
import { vec } from '../../../src/geometry/plane/vec.ts';
import { difference, intersection } from '../../../src/geometry/polygons/polygon-engine.ts';
import { polygonise } from '../../../src/geometry/polygons/polygonise.ts';
import { areaMm2, type Polygons } from '../../../src/geometry/polygons/polygons.ts';
import type { PartCut } from '../../../src/plan/part-cut.ts';
import { grindText } from '../../../src/words/grind-text.ts';
import { straightTexts } from '../../../src/words/straight-text.ts';
import { box, type CastingSpec, castingOf, disc, type JobSpec } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';
import { answerTo, planned } from '../../support/plan-answer.ts';

const solid = (loop: ReturnType<typeof box>): Polygons => polygonise([loop], 1e-4, 'outside');

const plate = solid(box(-60, -40, 60, 0));

/** A round shaft let into the edge of the plate. */
const segment = (radius: number, heightMm: number): Polygons =>
  intersection(plate, solid(circleLoop(vec(0, heightMm), radius)));

const extraOf = (cut: Polygons, radiusMm: number, keep: readonly Polygons[] = []): number => {
  const { cut: straight, asItWas } = straightened(plate, cut, keep, radiusMm);
  expect(asItWas).toEqual([]);
  expect(areaMm2(difference(cut, straight))).toBeLessThan(1e-3);
  return areaMm2(straight) - areaMm2(cut);
};

/** A tangent to a circle about (0, height) at an angle from straight down, as far as the plate's edge y = 0. */
const endTangentMm2 = (radius: number, height: number, angleRad: number): number => {
  // from the point of touch to y = 0 along the tangent, less the circle's own area there
  const touch = { x: radius * Math.sin(angleRad), y: height - radius * Math.cos(angleRad) };
  const outX = touch.x - touch.y / Math.tan(angleRad);
  const edgeX = Math.sqrt(radius * radius - height * height);
  const under = (x: number): number =>
    height * x - (x * Math.sqrt(radius * radius - x * x) + radius * radius * Math.asin(x / radius)) / 2;
  return (-touch.y * (outX - touch.x)) / 2 + (under(edgeX) - under(touch.x));
};

/** What tangents at 0 and ± an angle, with arcs between, take beyond a circle: R²(tan ½α − ½α), less the arcs' own. */
function threeTangentsMm2(radius: number, height: number, angleRad: number, arc: number): number {
  const spared = Math.tan(angleRad / 2) - angleRad / 2;
  return 2 * ((radius * radius - arc * arc) * spared + endTangentMm2(radius, height, angleRad));
}

describe('a round relief made straight', () => {
  it.each([
    [50, 45],
    [50, 46],
    [40, 34],
  ])(
    'of radius %d about %d above the edge takes no more than three tangents would, the middle one 10 long',
    (radius, height) => {
      const arc = 6;
      // the middle flat is 2(R − r) tan ½α
      const from = 2 * Math.atan(5 / (radius - arc));
      const outRad = Math.acos(height / radius);
      const angles = Array.from({ length: 400 }, (_, i) => from + ((outRad - from) * i) / 400);
      const best = Math.min(...angles.map((rad) => threeTangentsMm2(radius, height, rad, arc)));
      const extra = extraOf(segment(radius, height), arc);
      // directions are taken from the edge to a third of a degree, and a hair is left between
      expect(extra).toBeLessThan(1.03 * best + 0.05);
      expect(extra).toBeGreaterThan(0);
    },
  );

  it('a shallow one is two lines that meet under it, each shorter than a flat: both end in the outline', () => {
    // chord 9.9: tangents at ± α, with the widest arc between them
    const [radius, height] = [50, Math.sqrt(2500 - 4.95 ** 2)];
    const out = Math.acos(height / radius);
    const tangents = (rad: number): number =>
      (2500 - 121) * (Math.tan(rad) - rad) + 2 * endTangentMm2(radius, height, rad);
    const best = Math.min(...Array.from({ length: 200 }, (_, i) => tangents((out * (i + 0.5)) / 200)));
    expect(extraOf(segment(radius, height), 6)).toBeLessThan(best + 9.9 * 0.003);
  });

  it('a straight one costs a hair', () => {
    expect(extraOf(solid(box(-20, -3, 60, 0)), 0)).toBeLessThan(80 * 0.0021);
  });

  it('a saw-toothed one is cut along the feet of its teeth: half their width times their height more', () => {
    const teeth = Array.from({ length: 10 }, (_, i) => [vec(4 * i - 20, -3), vec(4 * i - 18, -1)]).flat();
    const cut = solid(polygonLoop([vec(-60, 0), vec(-60, -3), ...teeth, vec(20, -3), vec(60, -3), vec(60, 0)]));
    const extra = extraOf(cut, 0);
    const toothMm2 = (10 * 4 * 2) / 2;
    expect(extra).toBeLessThan(toothMm2 + 120 * 0.0021);
    expect(extra).toBeGreaterThan(toothMm2 - 1e-3);
  });

  it('bites nothing that must not be cut, or stays as it was', () => {
    const cut = segment(50, 45);
    const keep = difference(solid(box(-60, -6, 60, 0)), solid(circleLoop(vec(0, 45), 50.02)));
    const { cut: straight, asItWas } = straightened(plate, cut, [keep], 6);
    expect(areaMm2(intersection(straight, keep))).toBeLessThan(1e-3);
    expect(asItWas).toHaveLength(1);
  });

  it('an opening within the metal stays as it was, and is named', () => {
    const hole = solid(circleLoop(vec(0, -20), 8));
    expect(straightened(plate, hole, [], 6)).toMatchObject({ asItWas: [{ why: 'opening' }] });
    expect(areaMm2(straightened(plate, hole, [], 6).cut)).toBeCloseTo(areaMm2(hole), 6);
  });
});

const shafted = (said: CastingSpec = {}): JobSpec => ({
  clearance: 1,
  fixed: castingOf({
    name: 'Plate',
    material: { name: 'grey-iron', densityGPerCm3: 7.2 },
    sections: [{ id: 'plate', depth: [0, 20], mayCut: true, loops: [box(-60, -40, 60, 0)] }],
    ...said,
  }),
  moving: castingOf({ sections: [{ id: 'shaft', depth: [-20, 0], loops: [disc(0, 45, 49)] }] }),
  cutter: { radiusMm: 6, nose: 'flat', handErrorMm: 0.5, runOut: 'cut-past', stepoverMm: null },
});

const plan = (spec: JobSpec, straight = true): GrindAnswer => answerTo(jointOf({ ...spec, straight }));

const cutOf = (spec: JobSpec, straight = true): PartCut =>
  planned(jointOf({ ...spec, straight })).plan.cuts[0] as PartCut;

describe('a plan with straight edges', () => {
  const [bare, straight] = [plan(shafted(), false), plan(shafted())];

  it('says what they cost in area, volume and mass, apart from what clearance and cutter take', () => {
    const band = straight.sections[0]?.bands[0];
    const extra = (band?.areaMm2 ?? 0) - (bare.sections[0]?.bands[0]?.areaMm2 ?? 0);
    expect(extra).toBeGreaterThan(1);
    expect(band?.straightExtraAreaMm2).toBeCloseTo(extra, 3);
    expect(band?.extraAreaMm2).toBeCloseTo(bare.sections[0]?.bands[0]?.extraAreaMm2 as number, 4);
    expect(straight.straight).toMatchObject({ leastFlatMm: 10, leastArcRadiusMm: 6, asItWas: [] });
    expect(straight.straight?.extraVolumeMm3).toBeCloseTo(extra * 20, 2);
    expect(straight.straight?.extraMassG).toBeCloseTo((extra * 20 * 7.2) / 1000, 4);
    expect(straight.cutter?.extraVolumeMm3).toBeCloseTo(bare.cutter?.extraVolumeMm3 as number, 2);
    expect(grindAnswerSchema.parse(straight)).toEqual(straight);
    expect(straight.holds).toBe(true);
  });

  it('is asked for: a plain plan knows nothing of them', () => {
    expect(bare.straight).toBeNull();
    expect(bare.sections[0]?.bands[0]?.straightExtraAreaMm2).toBeNull();
    expect(straightTexts(jointOf(shafted()), cutOf(shafted(), false))).toEqual([]);
  });

  it('tells it in words', () => {
    const text = grindText(
      jointOf({ ...shafted(), straight: true }),
      planned(jointOf({ ...shafted(), straight: true })).plan,
      [],
    ).replace(/\s+/g, ' ');
    expect(text).toContain('Straight edges');
    expect(text).toContain('flats of 10 mm or more and arcs of radius 6 mm or more');
    expect(text).toMatch(/They take [\d.]+ g more/);
    expect(text).toMatch(/"plate", from face 0 to 20 mm: [\d.]+ mm² more\./);
  });

  it('without a cutter rounds its internal corners by the clearance, which costs nothing', () => {
    expect(plan({ ...shafted(), cutter: null }).straight).toMatchObject({ leastArcRadiusMm: 1, asItWas: [] });
  });

  it('names a stretch that stays as it was among the warnings', () => {
    const opening = {
      ...shafted(),
      moving: castingOf({ sections: [{ depth: [-20, 0], loops: [disc(0, -20, 8)] }] }),
    };
    const answer = plan(opening);
    expect(answer.straight?.asItWas).toMatchObject([{ section: 'plate', depth: [0, 20], why: 'opening' }]);
    expect(answer.warnings.map(({ code }) => code)).toContain('edge-not-straight');
    expect(straightTexts(jointOf(shafted()), cutOf(opening))[0]).toMatch(
      /^But for the stretches that the warnings name/,
    );
  });

  it('judges walls on the straight edge and its error', () => {
    const gallery = { hollows: [{ id: 'gallery', loops: [disc(9, -9, 2)], keepWallMm: 1 }] };
    const [wall, bareWall] = [plan(shafted(gallery)), plan(shafted(gallery), false)].map(({ walls }) => walls[0]);
    expect(wall?.nominalMm).toBeLessThan(bareWall?.nominalMm ?? 0);
    expect(wall?.wallMm).toBeLessThan(bareWall?.wallMm ?? 0);
  });
});
