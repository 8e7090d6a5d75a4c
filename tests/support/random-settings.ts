import type { Motion } from '../../src/geometry/motion/motion.ts';
import { edgesOfRegion, type Region } from '../../src/geometry/plane/loop.ts';
import { apply, type Rigid, rigid } from '../../src/geometry/plane/rigid.ts';
import { add, lerp, polar, scale, type Vec, vec } from '../../src/geometry/plane/vec.ts';
import type { Random } from './random.ts';
import { randomRegion } from './random-outlines.ts';

/** A moving solid, placed by `start`, that makes one motion past a fixed one. */
export interface Setting {
  readonly fixed: Region;
  readonly moving: Region;
  readonly start: Rigid;
  readonly motion: Motion;
}

const degree = Math.PI / 180;

/** A random setting in every way the kernel tells apart: kinds of edges, poles, spans beyond a circle, slides. */
export function randomSetting(random: Random): Setting {
  const fixed = randomRegion(random, random.pick([20, 100, 200]));
  const moving = randomRegion(random, random.pick([5, 20, 100]));
  const away = random.pick([0, 60, 150, 250, 400]) * random.between(0.5, 1.2);
  const start = rigid(random.between(-7, 7), polar(vec(0, 0), away, random.between(-4, 4)));
  return { fixed, moving, start, motion: randomMotion(random, fixed, moving, start) };
}

function randomMotion(random: Random, fixed: Region, moving: Region, start: Rigid): Motion {
  if (random.chance(0.3)) return { kind: 'slide', by: polar(vec(0, 0), randomLength(random), random.between(-4, 4)) };
  const pole = randomPole(random, fixed, moving, start);
  const far = Math.hypot(pole.x, pole.y) > 900;
  const most = far ? random.pick([30, 300]) / Math.hypot(pole.x, pole.y) : random.pick([5, 40, 180, 450]) * degree;
  return { kind: 'turn', pole, angleRad: random.pick([-1, 1]) * random.between(0.1, 1) * most };
}

const randomLength = (random: Random): number =>
  random.chance(0.1) ? 0 : random.chance(0.2) ? random.magnitude(1e-6, 1) : random.between(1, 500);

/** Inside, on a vertex, on an edge, at an arc's centre, beside, and far: of either solid as it stands at the start. */
function randomPole(random: Random, fixed: Region, moving: Region, start: Rigid): Vec {
  const ofMoving = random.chance(0.5);
  const place = (p: Vec): Vec => (ofMoving ? apply(start, p) : p);
  const edge = random.pick(edgesOfRegion(ofMoving ? moving : fixed));
  const middle =
    edge.kind === 'line'
      ? lerp(edge.a, edge.b, random.between(0.1, 0.9))
      : polar(edge.centre, edge.radius, edge.startRad + edge.sweepRad * random.between(0.1, 0.9));
  return random.pick<() => Vec>([
    () => place(vec(0, 0)),
    () => place(edge.a),
    () => place(middle),
    () => place(edge.kind === 'arc' ? edge.centre : scale(add(edge.a, edge.b), 0.3)),
    () => polar(vec(0, 0), random.between(50, 500), random.between(-4, 4)),
    () => polar(vec(0, 0), random.magnitude(1e3, 1e6), random.between(-4, 4)),
  ])();
}

/** The setting with its fixed solid moved so that a known least distance becomes `gapMm` (negative: they overlap). */
export function atGap(
  setting: Setting,
  nearest: { fixedAt: Vec; movingAt: Vec },
  distanceMm: number,
  gapMm: number,
): Setting {
  const back = (gapMm - distanceMm) / distanceMm;
  const shift = scale(vec(nearest.fixedAt.x - nearest.movingAt.x, nearest.fixedAt.y - nearest.movingAt.y), back);
  const fixed = setting.fixed.map((loop) =>
    loop.kind === 'circle'
      ? { ...loop, centre: add(loop.centre, shift) }
      : { ...loop, vertices: loop.vertices.map((v) => ({ ...v, ...add(v, shift) })) },
  );
  return { ...setting, fixed };
}
