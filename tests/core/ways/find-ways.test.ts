import { describe, expect, it } from 'vitest';
import { drain } from '../../../src/geometry/progress.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import { findWays, type WaysResult } from '../../../src/ways/find-ways.ts';
import { waysText } from '../../../src/words/ways-text.ts';
import { box, castingOf, disc, dowel, legsOf, ringPiece } from '../../support/jobs.ts';
import { jointOf } from '../../support/joints.ts';

const deg = Math.PI / 180;
const within = (fromDeg: number, toDeg: number) => ({ fromRad: fromDeg * deg, toRad: toDeg * deg });
const waysOf = (joint: Joint, fromDeg = -45, toDeg = 45): WaysResult => drain(findWays(joint, within(fromDeg, toDeg)));

/** Two rings that stand proud, one beyond the other, each with one gap of 12°; a lug of 4 mm radius must pass both. */
const gapDeg = 6;
const [outerGap, innerGap] = [-20, 10];
function rings(clearance: number): Joint {
  const ring = (at: number) => [ringPiece(50, 60, at + gapDeg, at - gapDeg + 360)];
  return jointOf({
    fixed: castingOf({
      name: 'block',
      sections: [
        { id: 'outer', depth: [-40, -30], loops: ring(outerGap) },
        { id: 'inner', depth: [-20, -10], loops: ring(innerGap) },
      ],
    }),
    moving: castingOf({ name: 'housing', sections: [{ id: 'lug', depth: [-5, 0], loops: [disc(55, 0, 4)] }] }),
    clearance,
    depthMarginMm: 0,
    nothingShares: true,
  });
}

/** From the middle of a lug so far off the middle of a gap to its face, a radial line, less the lug's radius. */
const keptMm = (offDeg: number): number => 55 * Math.sin((gapDeg - Math.abs(offDeg)) * deg) - 4;
const freeDeg = (clearanceMm: number): number => gapDeg - Math.asin((4 + clearanceMm) / 55) / deg;

describe('two rings with one gap each', () => {
  it('leave turns free as far as the closed form says, to the error of the map', () => {
    const { strips } = waysOf(rings(1));
    const outer = strips.find(({ strip }) => strip.fromMm === 30);
    const [free] = outer?.free ?? [];
    expect(outer?.free).toHaveLength(1);
    // the map takes metal 1e-3 mm too large at most: 1e-3 / 55 rad, doubled for the slope of the sine
    expect(free?.fromRad).toBeCloseTo((outerGap - freeDeg(1)) * deg, 4);
    expect(free?.toRad).toBeCloseTo((outerGap + freeDeg(1)) * deg, 4);
    expect(free?.fromRad).toBeGreaterThanOrEqual((outerGap - freeDeg(1)) * deg - 1e-8);
    expect(free?.toRad).toBeLessThanOrEqual((outerGap + freeDeg(1)) * deg + 1e-8);
  });

  it('let through as wide a way as the closed form says, to 1e-4 mm', () => {
    const { exists, widest } = waysOf(rings(1));
    expect(exists).toBe(true);
    expect(widest?.clearanceMm).toBeLessThanOrEqual(keptMm(0) + 1e-9);
    expect((widest?.clearanceMm ?? 0) + (widest?.boundMm ?? 0)).toBeGreaterThanOrEqual(keptMm(0));
    expect(widest?.boundMm).toBeLessThanOrEqual(1e-4);
  });

  it('are passed one after the other: slide in, turn between them, slide on', () => {
    const turns = waysOf(rings(1)).widest?.way.map(({ turnRad }) => Math.round(turnRad / deg));
    expect(turns).toEqual([outerGap, outerGap, innerGap, innerGap, 0, 0]);
  });

  it('have a way where it is only 0.05° wide', () => {
    expect(waysOf(rings(keptMm(0.025))).exists).toBe(true);
  });

  it('have none where it is shut by 0.01 mm', () => {
    const { exists, widest } = waysOf(rings(keptMm(0) + 0.01));
    expect(exists).toBe(false);
    expect(widest?.clearanceMm).toBeCloseTo(keptMm(0), 4);
  });

  it('have none within turns that do not reach a gap', () => {
    expect(waysOf(rings(0.1), -10, 45).exists).toBe(false);
    expect(waysOf(rings(0.1), -10, 45).widest).toBeNull();
  });
});

/** A lug that swings past a rib, both round. */
const lugPastRib = (clearance: number): Joint =>
  jointOf({
    fixed: castingOf({ name: 'block', sections: [{ id: 'rib', depth: [0, 20], loops: [disc(100, 0, 5)] }] }),
    moving: castingOf({ name: 'housing', sections: [{ id: 'lug', depth: [-15, -5], loops: [disc(0, 100, 5)] }] }),
    clearance,
    depthMarginMm: 0,
  });

describe('a single lug past a single rib', () => {
  it('is free up to where their middles are two radii and the clearance apart', () => {
    const { strips } = waysOf(lugPastRib(2), -120, 45);
    // the lug stands at 90°, the rib at 0°: turned by −90° they meet
    const farthest = 2 * Math.asin(12 / 200);
    const [first, second] = strips[0]?.free ?? [];
    expect(first?.toRad).toBeCloseTo(-90 * deg - farthest, 4);
    expect(second?.fromRad).toBeCloseTo(-90 * deg + farthest, 4);
    const [foul] = strips[0]?.foul ?? [];
    const touching = 2 * Math.asin(10 / 200);
    expect(foul?.fromRad).toBeCloseTo(-90 * deg - touching, 7);
    expect(foul?.toRad).toBeCloseTo(-90 * deg + touching, 7);
  });

  it('shares depth at the stand-offs between which their ends lie, open', () => {
    // fixed depth 0 to 20, moving 15 to 5 proud: shared from −15 to 15 of stand-off, of which from 0
    expect(
      waysOf(lugPastRib(2)).strips.map(({ strip: { fromMm, toMm, pairs } }) => [fromMm, toMm, pairs.length]),
    ).toEqual([
      [0, 15, 1],
      [15, 35, 0],
    ]);
  });
});

describe('limits on the way in', () => {
  const pinned = (proudMm: number): Joint =>
    jointOf({
      fixed: castingOf({
        name: 'block',
        sections: [{ id: 'rib', depth: [0, 20], loops: [box(96, -4, 104, 4)] }],
        holes: [dowel('D1', [80, 0], proudMm), dowel('D2', [-80, 0], proudMm)],
      }),
      moving: castingOf({
        name: 'housing',
        sections: [{ id: 'lug', depth: [-15, -5], loops: [disc(0, 100, 5)] }],
        holes: [dowel('P1', [80, 0]), dowel('P2', [-80, 0])],
      }),
      dowels: [
        ['D1', 'P1'],
        ['D2', 'P2'],
      ],
      clearance: 1,
      depthMarginMm: 0,
    });

  it('nothing turns while the dowels are engaged', () => {
    const { widest, strips } = waysOf(pinned(9));
    expect(strips.filter(({ strip }) => strip.onDowels).map(({ strip: { fromMm, toMm } }) => [fromMm, toMm])).toEqual([
      [0, 9],
    ]);
    for (const { turnRad, standOffMm } of widest?.way ?? []) if (standOffMm < 9) expect(turnRad).toBe(0);
  });

  it('a part that runs round the axis bars every way where the housing meets it', () => {
    const clutch = castingOf({ name: 'clutch', sections: [{ id: 'cover', depth: [-12, 0], loops: [disc(0, 0, 98)] }] });
    const joint = jointOf({ ...jobWithClutch, rotating: [clutch] });
    expect(waysOf(joint).exists).toBe(false);
    expect(waysOf(joint).widest).toBeNull();
    expect(waysOf(jointOf(jobWithClutch)).exists).toBe(true);
  });

  it('what nobody has traced leaves it undecided, where it alone is in the way', () => {
    const { exists, widest, strips } = waysOf(
      jointOf({
        ...jobWithClutch,
        fixed: castingOf({
          name: 'block',
          sections: [{ id: 'rib', depth: [0, 20], loops: [disc(100, 0, 5)] }],
          traced: { depth: [0, 20], loops: [box(50, -20, 130, 20)] },
        }),
      }),
    );
    expect(exists).toBeNull();
    expect(widest).toBeNull();
    expect(strips[0]?.unknown.length).toBeGreaterThan(0);
  });

  it('castings that never come near one another are not judged, and that is said', () => {
    const joint = jointOf({ ...jobWithClutch, nothingShares: false });
    const ways = waysOf(joint);
    expect({ reason: ways.reason, exists: ways.exists, cheapest: ways.cheapest }).toEqual({
      reason: 'never-near',
      exists: null,
      cheapest: null,
    });
    expect(waysText(joint, ways)).toMatch(/^UNDECIDED: (?!where nobody)/);
  });

  it('metal without a depth is met at every stand-off, so nothing is told', () => {
    const { reason, exists } = waysOf(
      jointOf({
        fixed: castingOf({ name: 'block', sections: [{ depth: null, loops: [disc(100, 0, 5)] }] }),
        moving: castingOf({ name: 'housing', sections: [{ depth: [-15, -5], loops: [disc(0, 100, 5)] }] }),
      }),
    );
    expect({ reason, exists }).toEqual({ reason: 'no-depths', exists: null });
  });
});

const jobWithClutch = {
  fixed: castingOf({ name: 'block', sections: [{ id: 'rib', depth: [0, 20] as const, loops: [disc(100, 0, 5)] }] }),
  moving: castingOf({
    name: 'housing',
    sections: [{ id: 'lug', depth: [-15, -5] as const, loops: [disc(0, 100, 5)] }],
  }),
  clearance: 1,
  depthMarginMm: 0,
  nothingShares: true,
};

const asideThenHome = [
  { standOff: 60, shift: [3, 0] as const },
  { standOff: 5, shift: [3, 0] as const },
  { standOff: 5 },
  {},
];

describe('where no way is free', () => {
  /** A lip that meets a boss at home: it has to lose a known segment whichever way it comes. */
  const joint = jointOf({
    fixed: castingOf({
      name: 'block',
      sections: [{ id: 'boss', depth: [0, 20], loops: [box(90, -5, 110, 5)], mayCut: true }],
      material: { name: 'iron', densityGPerCm3: 7.2 },
    }),
    moving: castingOf({ name: 'housing', sections: [{ id: 'lip', depth: [-10, 0], loops: [box(105, -20, 125, 20)] }] }),
    clearance: 1,
    depthMarginMm: 0,
  });

  it('straight in takes what stands within the clearance of the lip, and no bound is above that', () => {
    const { exists, cheapest } = waysOf(joint);
    expect(exists).toBe(false);
    const straight = cheapest?.ways.find(({ of }) => of === 'straight-in');
    // 6 mm of a boss 10 mm wide, over the 10 mm that the lip stands proud
    expect(straight?.volumeMm3).toBeCloseTo(600, 0);
    expect(cheapest?.lowerBoundMm3).toBeLessThanOrEqual(600);
    expect(cheapest?.lowerBoundMm3).toBeGreaterThan(540);
  });

  it('the way of a fit that is straight in is told once, as both, wherever out there it sets out', () => {
    for (const standOff of [12, 40, 500]) {
      const fit = { ...joint.fit, legs: legsOf([{ standOff }, {}]) };
      const ways = waysOf({ ...joint, fit });
      expect(ways.cheapest?.ways.map(({ of, also }) => [of, also])).toEqual([['the-fit', ['straight-in']]]);
      expect(waysText(joint, ways).replace(/\s+/g, ' ')).toContain('slide home (as the fit asks and straight in).');
    }
  });

  it('the way of a fit that first turns where nothing meets yet is straight in as well', () => {
    const fit = { ...joint.fit, legs: legsOf([{ standOff: 60, turn: 20 }, { standOff: 60 }, {}]) };
    expect(waysOf({ ...joint, fit }).cheapest?.ways.map(({ of, also }) => [of, also])).toEqual([
      ['the-fit', ['straight-in']],
    ]);
  });

  it('the way of a fit that turns beside the fixed part, or goes aside, is told beside straight in', () => {
    for (const offerUp of [
      [{ standOff: 60, turn: 20 }, { standOff: 2, turn: 20 }, { standOff: 2 }, {}],
      asideThenHome,
    ]) {
      const fit = { ...joint.fit, legs: legsOf(offerUp) };
      const of = waysOf({ ...joint, fit }).cheapest?.ways.map((way) => way.of);
      expect(of).toContain('the-fit');
      expect(of).toContain('straight-in');
    }
  });

  it('no other way is told where none saves anything', () => {
    expect(waysOf(joint).cheapest?.ways.map(({ of }) => of)).toEqual(['straight-in']);
  });
});

describe('a ring without a gap, and a lug that must get past it', () => {
  /** A ring of 50 to 60 mm that stands 40 to 30 mm proud; a lug of 4 mm radius, 55 mm from the axis, 5 mm proud. */
  const ringed = (engagesAtMm: number | null = null): Joint => {
    const joint = jointOf({
      fixed: castingOf({
        name: 'block',
        sections: [{ id: 'ring', depth: [-40, -30], loops: [disc(0, 0, 60), disc(0, 0, 50)] }],
      }),
      moving: castingOf({ name: 'housing', sections: [{ id: 'lug', depth: [-5, 0], loops: [disc(55, 0, 4)] }] }),
      clearance: 1,
      depthMarginMm: 0,
      nothingShares: true,
    });
    return { ...joint, fit: { ...joint.fit, engagesAtMm } };
  };
  const lifted = (joint: Joint, mostMm: number, stepMm: number): WaysResult =>
    drain(findWays(joint, within(-45, 45), { mostMm, stepMm }));

  it('goes in carried aside, from the nearest place of the grid from which it clears the ring, within it or outside', () => {
    const { exists, widest, lifts } = lifted(ringed(), 30, 5);
    expect({ exists, widest, shifts: lifts?.shifts }).toMatchObject({ exists: false, widest: null, shifts: 112 });
    const { shift, positions, check } = lifts?.way ?? { shift: null, positions: [], check: null };
    // the lug's middle must be 65 mm from the axis or 45: 10 mm aside it is so at a single turn, 11.18 mm over some of them
    expect(Math.hypot(shift?.x ?? 0, shift?.y ?? 0)).toBeCloseTo(Math.hypot(5, 10), 9);
    expect(check?.meetsClearance).toBe(true);
    const [past] = positions;
    const awayMm = Math.hypot(
      55 * Math.cos(past?.turnRad ?? 0) + (shift?.x ?? 0),
      55 * Math.sin(past?.turnRad ?? 0) + (shift?.y ?? 0),
    );
    expect(check?.wayIn?.clearanceMm).toBeCloseTo(Math.max(awayMm - 64, 46 - awayMm), 6);
    expect(positions.at(-1)).toMatchObject({ standOffMm: 0, turnRad: 0, shift: { x: 0, y: 0 } });
  });

  it('does not where the grid ends before that, which proves nothing of others', () => {
    const ways = lifted(ringed(), 8, 4);
    expect(ways.lifts).toMatchObject({ way: null, shifts: 12 });
    expect(waysText(ringed(), ways).replaceAll(/\s+/g, ' ')).toContain(
      'none shows a way without cutting. Between them nothing is known.',
    );
  });

  it('does not where the shaft engages before the ring is passed, and does where it engages just after', () => {
    expect(lifted(ringed(30.5), 30, 5).lifts?.way).toBeNull();
    expect(
      lifted(ringed(29.5), 30, 5).lifts?.way?.positions.find(({ shift }) => shift.x === 0)?.standOffMm,
    ).toBeGreaterThanOrEqual(29.5);
  });

  it('has no least metal where nothing of what stands in every way is offered, and that is said', () => {
    const ways = lifted(ringed(), 8, 4);
    expect(ways.cheapest?.lowerBoundMm3).toBeNull();
    expect(waysText(ringed(), ways).replaceAll(/\s+/g, ' ')).toContain(
      'No way that goes inward all the time with three turns or fewer spares what is not offered.',
    );
  });

  it('says that no shaft holds it on the axis where none is stated', () => {
    const told = (joint: Joint): string => waysText(joint, lifted(joint, 30, 5)).replaceAll(/\s+/g, ' ');
    expect(told(ringed())).toContain('No input shaft is stated, so that none holds it on the axis');
    expect(told(ringed(29.5))).not.toContain('No input shaft');
  });

  it('is not lifted where it needs no lift', () => {
    expect(lifted(rings(1), 30, 10).lifts).toBeNull();
  });
});

describe('a cut that is cheaper when the part is carried aside at first', () => {
  /** The ring again, and nearer the face a rib that no way spares: beside the axis only the rib need be cut. */
  it('takes what comes after the lift and no more', () => {
    const joint = jointOf({
      fixed: castingOf({
        name: 'block',
        sections: [
          { id: 'ring', depth: [-40, -30], mayCut: true, loops: [disc(0, 0, 60), disc(0, 0, 50)] },
          { id: 'rib', depth: [-15, -5], mayCut: true, loops: [disc(0, 0, 56), disc(0, 0, 50)] },
        ],
      }),
      moving: castingOf({ name: 'housing', sections: [{ id: 'lug', depth: [-5, 0], loops: [disc(55, 0, 4)] }] }),
      clearance: 1,
      depthMarginMm: 0,
      nothingShares: true,
    });
    const onShaft = { ...joint, fit: { ...joint.fit, engagesAtMm: 20 } };
    const { cheapest, lifts } = drain(findWays(onShaft, within(-45, 45), { mostMm: 20, stepMm: 10 }));
    const [best] = cheapest?.ways ?? [];
    const cut = lifts?.cut ?? null;
    expect(best?.holds).toBe(true);
    expect(cut?.holds).toBe(true);
    // a lens of two circles, 55 apart: within 5 of the lug's middle and between 50 and 56 (60) of the axis, 10 deep
    const ringMm3 = 10 * (lens(60) - lens(50));
    const ribMm3 = 10 * (lens(56) - lens(50));
    expect(best?.volumeMm3).toBeCloseTo(ringMm3 + ribMm3, -1);
    // a ring is the same at every turn, so that no way takes less, however often it turns
    const boundMm3 = cheapest?.lowerBoundMm3 ?? 0;
    expect(boundMm3).toBeLessThanOrEqual(ringMm3 + ribMm3);
    expect(boundMm3).toBeGreaterThan(0.9 * (ringMm3 + ribMm3));
    expect(cut?.volumeMm3).toBeCloseTo(ribMm3, -1);
  });
});

/** The area that a circle of 5 mm, 55 mm from the axis, shares with one of `radius` about the axis. */
function lens(radius: number): number {
  const [d, r] = [55, 5];
  if (radius >= d + r) return Math.PI * r * r;
  const a = (d * d + r * r - radius * radius) / (2 * d * r);
  const b = (d * d + radius * radius - r * r) / (2 * d * radius);
  const root = Math.sqrt((-d + r + radius) * (d + r - radius) * (d - r + radius) * (d + r + radius));
  return (
    r * r * Math.acos(Math.max(-1, Math.min(1, a))) +
    radius * radius * Math.acos(Math.max(-1, Math.min(1, b))) -
    root / 2
  );
}
