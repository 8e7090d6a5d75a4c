import { describe, expect, it } from 'vitest';
import { checkJoint } from '../../../src/clearance/check.ts';
import { profileGauges } from '../../../src/drawing/markout/profile-gauge.ts';
import { stripsOf } from '../../../src/drawing/markout/side-strip.ts';
import { swingPieces } from '../../../src/drawing/markout/swing-gauge.ts';
import { regionContains } from '../../../src/geometry/motion/containment.ts';
import { nearestOnOutline } from '../../../src/geometry/motion/nearest-point.ts';
import { buildOutlineTree, type OutlineTree } from '../../../src/geometry/motion/outline-tree.ts';
import type { Box } from '../../../src/geometry/plane/edge-box.ts';
import { boxOfRegion } from '../../../src/geometry/plane/region-box.ts';
import { add, distance, lerp, polar, scale, type Vec, vec } from '../../../src/geometry/plane/vec.ts';
import { loopsOf, type Polygons, signedAreaMm2 } from '../../../src/geometry/polygons/polygons.ts';
import { drain } from '../../../src/geometry/progress.ts';
import type { Casting, DepthRange } from '../../../src/job/casting.ts';
import type { Bench } from '../../../src/markout/marking-out-bench.ts';
import { levelsOf, locatingPlate } from '../../../src/markout/marking-out-plate.ts';
import { type SwingGauge, swingGauge } from '../../../src/markout/marking-out-swing.ts';
import { textBoxes } from '../../support/drawings.ts';
import { box, castingOf, holeOf, type JobSpec } from '../../support/jobs.ts';
import { caseCutInstead, lugJob, plannedDemo, plannedJob, plannedWithoutCutter } from '../../support/markout-jobs.ts';
import { benchesFor, type PlannedJoint } from '../../support/plan-answer.ts';

/** Points of a box, 4 mm apart. */
const candidates = ({ minX, minY, maxX, maxY }: Box): Vec[] =>
  Array.from({ length: Math.floor((maxX - minX) / 4) }, (_, i) =>
    Array.from({ length: Math.floor((maxY - minY) / 4) }, (_, k) => vec(minX + 4 * i, minY + 4 * k)),
  ).flat();

const benchFor = (planned: PlannedJoint, mirrored = false): Bench => benchesFor(planned, mirrored)[0] as Bench;

const benches = {
  carrier: benchFor(plannedDemo('transfer-case')),
  'carrier, corners sharp': benchFor(plannedWithoutCutter('transfer-case')),
  starter: benchFor(plannedDemo('starter')),
  'case cut instead': benchFor(caseCutInstead()),
  lug: benchFor(plannedJob(lugJob)),
  'lug mirrored': benchFor(plannedJob(lugJob), true),
};

/** The metal of a casting at any of a range of depths, section by section. */
const metalAt = ({ sections }: Casting, range: DepthRange | null): OutlineTree[] =>
  sections
    .filter(({ depth }) => depth === null || range === null || (depth.fromMm < range.toMm && range.fromMm < depth.toMm))
    .map(({ loops }) => buildOutlineTree(loops));

/** Inside metal by more than a hundredth of a millimetre. */
const isIn = (metal: readonly OutlineTree[], p: Vec): boolean =>
  metal.some((tree) => regionContains(tree, p.x, p.y) && nearestOnOutline(tree, p).distanceMm > 0.01);

/** Places along an outline, a millimetre or less apart. */
const along = (outline: Polygons): Vec[] =>
  outline.flatMap((polygon) =>
    polygon.flatMap((a, i) => {
      const b = polygon[(i + 1) % polygon.length] as Vec;
      const count = Math.max(1, Math.ceil(distance(a, b)));
      return Array.from({ length: count }, (_, k) => lerp(a, b, k / count));
    }),
  );

describe.each(Object.entries(benches))('the profile gauge: %s', (_, bench) => {
  const gauges = profileGauges(bench);
  const pieces = gauges.flatMap((gauge) => gauge.pieces.map((piece) => ({ band: gauge.band, piece })));

  it('is made for every band, and its edge lies on the whole of the cut', () => {
    expect(gauges.map(({ band }) => band)).toEqual(bench.bands);
    const gauged = pieces.flatMap(({ piece }) => piece.gauging.flatMap(({ points }) => along([points])));
    const missed = pieces.flatMap(({ piece }) => piece.missed.flatMap(({ points }) => along([points])));
    for (const { places } of bench.bands) {
      for (const { at } of places) {
        expect(Math.min(...[...gauged, ...missed].map((p) => distance(p, at)))).toBeLessThan(0.6);
      }
    }
    expect(missed).toEqual([]);
  });

  it('goes home when the cut is done: it lies in no metal that stays, all the way in', () => {
    for (const { band, piece } of pieces) {
      const left = metalAt(bench.after, band.depth);
      for (const p of along(piece.outline)) {
        for (let out = 0; out <= 60; out += 2) expect(isIn(left, add(p, scale(piece.outward, out)))).toBe(false);
      }
    }
  });

  it('does not go home before: it lies in metal that is to come off', () => {
    for (const { band, piece } of pieces) {
      const present = metalAt(bench.present, band.depth);
      expect(along(piece.outline).some((p) => isIn(present, p))).toBe(true);
    }
  });

  it('stands clear of the casting but for the cut and 3 mm beside it', () => {
    for (const { band, piece } of pieces) {
      const left = metalAt(bench.after, band.depth);
      const cut = buildOutlineTree(band.relief);
      for (const p of along(piece.outline)) {
        if (nearestOnOutline(cut, p).distanceMm < 4.6) continue;
        expect(Math.min(...left.map((tree) => nearestOnOutline(tree, p).distanceMm))).toBeGreaterThan(1.4);
      }
    }
  });

  it('has its pins clear of every metal between the face and the far side of the band', () => {
    for (const { band, piece } of pieces) {
      const between = band.depth && { fromMm: Math.min(0, band.depth.fromMm), toMm: Math.max(0, band.depth.toMm) };
      const passed = metalAt(bench.after, between);
      expect(piece.pins).not.toBeNull();
      for (const pin of piece.pins ?? []) {
        expect(isIn(passed, pin)).toBe(false);
        for (const tree of passed) expect(nearestOnOutline(tree, pin).distanceMm).toBeGreaterThan(6);
      }
    }
  });

  it('has a plate over both holes and all pins, clear of what stands proud', () => {
    for (const { pieces, plate } of gauges) {
      if (plate === null || bench.holes === null) throw new Error('no plate');
      const tree = buildOutlineTree(loopsOf(plate));
      const held = [...bench.holes.map(({ at }) => at), ...pieces.flatMap(({ pins }) => pins ?? [])];
      for (const at of held) expect(regionContains(tree, at.x, at.y)).toBe(true);
      const proud = metalAt(bench.present, { fromMm: -3, toMm: 0 });
      for (const p of along(plate)) expect(isIn(proud, p)).toBe(false);
    }
  });

  it('has a plate that goes over a stud or a dowel', () => {
    for (const { pieces, plate } of gauges) {
      const pins = pieces.flatMap((piece) => piece.pins ?? []);
      if (plate === null || bench.holes === null) throw new Error('no plate');
      const box = boxOfRegion(loopsOf(plate));
      // somewhere on the plate, away from its rim and from what locates it
      const middle = candidates(box).find(
        (p) =>
          regionContains(buildOutlineTree(loopsOf(plate)), p.x, p.y) &&
          nearestOnOutline(buildOutlineTree(loopsOf(plate)), p).distanceMm > 8,
      );
      if (middle === undefined) throw new Error('no room on the plate');
      for (const said of [{ kind: 'stud' }, { kind: 'dowel', proudMm: 8 }] as const) {
        const standing = holeOf({ id: 'X', at: [middle.x, middle.y], diameterMm: 12, ...said });
        const round = locatingPlate(
          { ...bench, present: { ...bench.present, holes: [...bench.present.holes, standing] } },
          pins,
        );
        if (round === null) throw new Error('no plate');
        const tree = buildOutlineTree(loopsOf(round));
        expect(regionContains(tree, middle.x, middle.y)).toBe(false);
        expect(nearestOnOutline(tree, middle).distanceMm).toBeGreaterThan(6.9);
      }
    }
  });
});

describe('the height a gauge is held at', () => {
  it('is the depth of either end of its band under a plate on the face', () => {
    expect(levelsOf({ fromMm: 14, toMm: 32 })).toEqual([
      { depthMm: 14, spacerMm: 14, held: 'under' },
      { depthMm: 29, spacerMm: 29, held: 'under' },
    ]);
  });

  it('is taken over the plate, both plies off, where the band stands proud', () => {
    // near side at 44 proud: the ply reaches down to 41, the plate up to 3
    expect(levelsOf({ fromMm: -44, toMm: -30 })).toEqual([
      { depthMm: -44, spacerMm: 38, held: 'over' },
      { depthMm: -33, spacerMm: 27, held: 'over' },
    ]);
  });

  it('is one height for a band no deeper than the ply', () => {
    expect(levelsOf({ fromMm: 5, toMm: 7 }).length).toBe(1);
  });
});

describe.each([
  ['carrier', benches.carrier],
  ['carrier mirrored', benchFor(plannedDemo('transfer-case'), true)],
  ['case cut instead', benches['case cut instead']],
])('the swing gauge: %s', (_, bench) => {
  const reading = swingGauge(bench);
  if (!('gauge' in reading)) throw new Error(reading.why);
  const { pieces, plate, scale: turns, bore, touch } = reading.gauge;
  const sign = bench.mirrored ? -1 : 1;
  const turned = (p: Vec, deg: number): Vec => {
    const rad = (sign * deg * Math.PI) / 180;
    return vec(p.x * Math.cos(rad) - p.y * Math.sin(rad), p.x * Math.sin(rad) + p.y * Math.cos(rad));
  };
  /** Metal that shares depth with a piece at stand-off 14: moving metal lies at z = 14 + its depth, fixed metal at −its depth. */
  const metalBy = (casting: Casting, depth: DepthRange | null): OutlineTree[] => {
    if (depth === null) throw new Error('no depth');
    return metalAt(casting, { fromMm: -14 - depth.toMm, toMm: -14 - depth.fromMm });
  };
  const hits = (casting: Casting, deg: number): number =>
    pieces.reduce((count, { outline, depth }) => {
      const metal = metalBy(casting, depth);
      return count + along(outline).filter((p) => isIn(metal, turned(p, deg))).length;
    }, 0);
  /** Pieces in metal, at every half degree of the swing. */
  const fouls = (casting: Casting): number => {
    let count = 0;
    for (let deg = 0; deg <= 22; deg += 0.5) count += hits(casting, deg);
    return count;
  };

  it('swings through free when the cut is done, and not before', () => {
    expect(fouls(bench.after)).toBe(0);
    expect(fouls(bench.present)).toBeGreaterThan(10);
  });

  it('says where it first touches before the cut: nowhere at a larger turn, and there an edge on an edge', () => {
    if (touch === null) throw new Error('no touch');
    const deg = (touch.turnRad * 180) / Math.PI;
    for (let more = 22; more > deg; more -= 0.25) expect(hits(bench.present, more)).toBe(0);
    // a corner that touches is a place of the outline; 0.3° farther it is in by up to a millimetre
    expect(hits(bench.present, deg - 0.3)).toBeGreaterThan(0);
    const piece = pieces.find(({ name }) => name === touch.piece);
    if (piece === undefined) throw new Error(touch.piece);
    expect(nearestOnOutline(buildOutlineTree(loopsOf(piece.outline)), touch.at).distanceMm).toBeLessThan(1e-4);
    const at = turned(touch.at, deg);
    const metal = metalBy(
      { ...bench.present, sections: bench.present.sections.filter(({ id }) => id === touch.section) },
      piece.depth,
    );
    expect(Math.min(...metal.map((tree) => nearestOnOutline(tree, at).distanceMm))).toBeLessThan(1e-4);
    // with the clearance round it, it comes before the bare part's
    expect(deg).toBeGreaterThan(((bench.touch?.touch.turnRad ?? 0) * 180) / Math.PI);
  });

  it('has the first touch of the bare parts on the casting it is to be looked for on', () => {
    if (bench.touch === null) throw new Error('no touch');
    const { touch: bare, at, depth } = bench.touch;
    expect(bare).toEqual(drain(checkJoint(bench.joint)).wayIn?.firstTouch);
    const id = bench.cut === 'fixed' ? bare.fixedSection : bare.movingSection;
    const sections = bench.present.sections.filter((section) => section.id === id);
    const trees = sections.map(({ loops }) => buildOutlineTree(loops));
    expect(Math.min(...trees.map((tree) => nearestOnOutline(tree, at).distanceMm))).toBeLessThan(1e-5);
    // lips from 44 to 30 proud, 14 off: from face 16 to 30 of the ribs, and they the lips' whole length
    expect(depth).toEqual(bench.cut === 'fixed' ? { fromMm: 16, toMm: 30 } : { fromMm: -44, toMm: -30 });
  });

  it('has every piece under its plate, which turns about the crank', () => {
    // its slots may pass over a piece; its outside may not
    const outside = plate.toSorted((a, b) => Math.abs(signedAreaMm2(b)) - Math.abs(signedAreaMm2(a))).slice(0, 1);
    const tree = buildOutlineTree(loopsOf(outside));
    for (const { outline } of pieces)
      for (const p of along(outline)) expect(nearestOnOutline(tree, p).distanceMm).toBeGreaterThan(0.5);
    expect(regionContains(tree, 0, 0)).toBe(true);
    expect(bore).not.toBeNull();
  });

  it('shows its dowel against the marks: turned by as much as a mark says, the mark is over it', () => {
    if (turns === null) throw new Error('no marks');
    for (const deg of [0, 5, 13.6, 22]) {
      const over = turned(turns.at((deg * Math.PI) / 180), deg);
      expect(distance(over, turns.hole.at)).toBeLessThan(1e-9);
    }
  });
});

describe('pieces too thin to cut from ply', () => {
  /** A pin 8 mm square and a wire that swing past a post, with 1 mm asked. */
  const wired = (wireMm: number): Bench => {
    const at = (deg: number, half: number) => {
      const { x, y } = polar(vec(0, 0), 180, (deg * Math.PI) / 180);
      return box(x - half, y - half, x + half, y + half);
    };
    const spec: JobSpec = {
      clearance: 1,
      offerUp: [{ standOff: 60, turn: 20 }, { standOff: 14, turn: 20 }, { standOff: 14 }, {}],
      fixed: castingOf({
        sections: [{ id: 'post', depth: [0, 90], mayCut: true, loops: [box(166, 24, 183, 37)] }],
      }),
      moving: castingOf({
        sections: [
          { id: 'pin', depth: [-44, -30], loops: [at(-2, 4)] },
          { id: 'wire', depth: [-44, -30], loops: [at(-6, wireMm / 2)] },
        ],
      }),
    };
    return benchFor(plannedJob(spec));
  };
  const gaugeFor = (bench: Bench): SwingGauge => {
    const reading = swingGauge(bench);
    if (!('gauge' in reading)) throw new Error(reading.why);
    return reading.gauge;
  };

  it('are left out, and the sheet says so', () => {
    // 0.8 and 1 mm round it
    const bench = wired(0.8);
    const gauge = gaugeFor(bench);
    expect(gauge.pieces.map(({ name, section }) => [name, section])).toEqual([['SW1', 'pin']]);
    expect(gauge.tooThin).toEqual(['wire']);
    const words = textBoxes(swingPieces(bench, gauge, false)).map(({ text }) => text);
    expect(words.join(' ')).toContain('Left out: pieces of wire that are nowhere wider than 3 mm');
  });

  it('are kept from 3 mm wide', () => {
    expect(gaugeFor(wired(1.2)).tooThin).toEqual([]);
  });
});

it.each([
  ['starter', 'nothing turns on the way in'],
  ['lug', 'nothing turns on the way in'],
] as const)('there is no swing gauge for %s, and it says why', (name, why) => {
  expect(swingGauge(benches[name])).toEqual({ why });
});

describe('the side strip', () => {
  const [strip] = stripsOf(benches.starter);
  if (strip === undefined) throw new Error('no strip');

  it('is as long as the arc of the boss that goes', () => {
    // closed form: the crossing of R 49.5 and R 17, 62.5 apart, subtends 2·acos((b² + d² − a²)/2bd) at the boss
    const half = Math.acos((17 ** 2 + 62.5 ** 2 - 49.5 ** 2) / (2 * 17 * 62.5));
    expect(strip.cutMm).toBeCloseTo(2 * 17 * half, 2);
  });

  it('has its figures square to the side at their places along it', () => {
    for (const { alongMm, plannedMm, firstMm, lastMm } of strip.stations) {
      // from the boss's own middle, at the angle off the line of centres that the arc length gives
      const off = (alongMm - strip.cutMm / 2) / 17;
      const reach = (radius: number): number =>
        17 - (62.5 * Math.cos(off) - Math.sqrt(radius ** 2 - (62.5 * Math.sin(off)) ** 2));
      expect(plannedMm).toBeCloseTo(reach(49.5), 2);
      expect(firstMm).toBeCloseTo(reach(49), 2);
      expect(lastMm).toBeCloseTo(reach(50), 2);
    }
    expect(strip.stations.length).toBeGreaterThan(1);
  });

  it('has the last line begin and end outside the planned cut, the first inside it', () => {
    const [first, last] = [strip.firstEnds.toSorted((a, b) => a - b), strip.lastEnds.toSorted((a, b) => a - b)];
    expect(first[0]).toBeGreaterThan(0);
    expect(first[1]).toBeLessThan(strip.cutMm);
    expect(last[0]).toBeLessThan(0);
    expect(last[1]).toBeGreaterThan(strip.cutMm);
  });

  it('runs to the right anticlockwise round the casting, as one sees it from outside with the face up', () => {
    const start = strip.places.find(({ alongMm }) => Math.abs(alongMm) < 0.1)?.place.at;
    const end = strip.places.find(({ alongMm }) => Math.abs(alongMm - strip.cutMm) < 0.1)?.place.at;
    if (start === undefined || end === undefined) throw new Error('no ends');
    // round the boss's own middle, by way of the side that faces the crank
    const middle = vec(37.5, 50);
    const turn = (p: Vec): number => Math.atan2(p.y - middle.y, p.x - middle.x);
    expect((turn(end) - turn(start) + 2 * Math.PI) % (2 * Math.PI)).toBeCloseTo(strip.cutMm / 17, 2);
  });

  it('folds at the corners of a rib', () => {
    const rib = stripsOf(benches.carrier)[1];
    if (rib === undefined) throw new Error('no strip');
    // rib 2 is 8 thick: two corners 8 apart, and 5.6 comes off between them
    expect((rib.corners[1] ?? 0) - (rib.corners[0] ?? 0)).toBeCloseTo(8, 2);
    expect(rib.stations.map(({ through }) => through)).toEqual([true, false, true]);
  });
});
