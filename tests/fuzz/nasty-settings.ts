import type { Loop, Region, Vertex } from '../../src/geometry/plane/loop.ts';
import { edgesOfRegion, moveRegion } from '../../src/geometry/plane/loop.ts';
import { inverse, rigid, rotationAbout } from '../../src/geometry/plane/rigid.ts';
import { vec } from '../../src/geometry/plane/vec.ts';
import type { Random } from '../support/random.ts';
import { randomRegion } from '../support/random-outlines.ts';
import { randomSetting, type Setting } from '../support/random-settings.ts';

/** Settings that try a kernel's nerves: common edges, collinear overlaps, corners that meet, slivers, all but equal. */
export function nastySetting(random: Random): Setting {
  const plain = randomSetting(random);
  return random.pick([itself, itselfAlmost, snapped, slivered, cornerOnCorner, backToItself])(random, plain);
}

type Spoil = (random: Random, plain: Setting) => Setting;

/** The same solid twice, standing as one, then moved. */
const itself: Spoil = (_, plain) => ({ ...plain, moving: plain.fixed, start: rigid(0, vec(0, 0)) });

const itselfAlmost: Spoil = (random, plain) => {
  const hair = (): number => random.pick([-1, 1]) * random.magnitude(1e-12, 1e-3);
  return { ...plain, moving: plain.fixed, start: rigid(random.chance(0.5) ? hair() : 0, vec(hair(), hair())) };
};

/** Every coordinate on a coarse grid: edges fall in line, corners on edges. */
const snapped: Spoil = (random, plain) => {
  const grid = random.pick([5, 10, 20]);
  const snap = (x: number): number => grid * Math.round(x / grid);
  const quarter = Math.round(random.between(-4, 4)) * (Math.PI / 2);
  const motion: Setting['motion'] =
    plain.motion.kind === 'slide'
      ? { kind: 'slide', by: vec(snap(plain.motion.by.x), random.chance(0.5) ? 0 : snap(plain.motion.by.y)) }
      : { ...plain.motion, pole: vec(snap(plain.motion.pole.x), snap(plain.motion.pole.y)) };
  const solid = (): Region => [gridLoop(random, grid)];
  return {
    fixed: solid(),
    moving: solid(),
    start: rigid(quarter, vec(snap(plain.start.shift.x / 4), snap(plain.start.shift.y / 4))),
    motion,
  };
};

/** A row of steps over a floor, as round a keyed plate: simple whatever the heights. */
function gridLoop(random: Random, grid: number): Loop {
  const heights = Array.from({ length: random.whole(1, 5) }, () => grid * random.whole(1, 4));
  const tops = heights.flatMap((y, i) => [vec(i * grid, y), vec((i + 1) * grid, y)]);
  const vertices = [...tops, vec(heights.length * grid, 0), vec(0, 0)].filter((p, i, all) => {
    const before = all[(i + all.length - 1) % all.length];
    return !before || before.x !== p.x || before.y !== p.y;
  });
  return { kind: 'path', vertices: vertices.map((p) => ({ ...p, bulge: 0 })) };
}

/** A vertex here and there split in two that are a sliver apart. */
const slivered: Spoil = (random, plain) => {
  const split = (v: Vertex): Vertex[] =>
    random.chance(0.4) ? [{ ...v, x: v.x + random.magnitude(1e-9, 1e-6), bulge: 0 }, v] : [v];
  const spoil = (region: Region): Region =>
    region.map((loop) => (loop.kind === 'circle' ? loop : { ...loop, vertices: loop.vertices.flatMap(split) }));
  return { ...plain, fixed: spoil(plain.fixed), moving: spoil(plain.moving) };
};

/** A vertex of one on a vertex of the other at the start, the pole there too half the time. */
const cornerOnCorner: Spoil = (random, plain) => {
  const [fixed, moving] = [plain.fixed, moveRegion(randomRegion(random, 40), rigid(plain.start.turnRad, vec(0, 0)))];
  const f = random.pick(edgesOfRegion(fixed)).a;
  const m = random.pick(edgesOfRegion(moving)).a;
  const motion = plain.motion.kind === 'turn' && random.chance(0.5) ? { ...plain.motion, pole: f } : plain.motion;
  return { fixed, moving, start: rigid(0, vec(f.x - m.x, f.y - m.y)), motion };
};

/** Turned so that it comes to stand as its own double. */
const backToItself: Spoil = (random, plain) => {
  const pole = vec(random.between(-50, 50), random.between(-50, 50));
  const angleRad = random.between(-7, 7);
  return {
    fixed: plain.fixed,
    moving: plain.fixed,
    start: inverse(rotationAbout(pole, angleRad)),
    motion: { kind: 'turn', pole, angleRad },
  };
};
