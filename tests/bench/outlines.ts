import type { Motion } from '../../src/geometry/motion/motion.ts';
import { type PathLoop, polygonLoop, type Region, type Vertex } from '../../src/geometry/plane/loop.ts';
import { type Rigid, rotationAbout } from '../../src/geometry/plane/rigid.ts';
import { polar, type Vec, vec } from '../../src/geometry/plane/vec.ts';
import { Random } from '../support/random.ts';

/** How outlines are made up: even waves; waves with a scanner's noise on every vertex; every other edge an arc. */
export type Finish = 'smooth' | 'noisy' | 'with arcs';

/** A solid that moves in the hole of a ring, with `edges` edges round each, and the pole it turns about. */
export interface Pair {
  readonly name: string;
  readonly edges: number;
  readonly fixed: Region;
  readonly moving: Region;
  readonly pole: Vec;
}

/** The turn that is measured; where it is sampled, 200 positions stand for it. */
export const turnDeg = 15;
const turnRad = (turnDeg * Math.PI) / 180;
const positions = 200;

export const turnOf = ({ pole }: Pair): Motion => ({ kind: 'turn', pole, angleRad: turnRad });

export const sampledPlacements = ({ pole }: Pair): Rigid[] =>
  Array.from({ length: positions }, (_, i) => rotationAbout(pole, (turnRad * i) / (positions - 1)));

/** A flange in a ring in every finish and every size. */
export const pairsOf = (sizes: readonly number[]): Pair[] =>
  sizes.flatMap((edges) => (['smooth', 'noisy', 'with arcs'] as const).map((finish) => flangeInRing(finish, edges)));

const noiseMm = 0.2;

/** A wavy flange, up to 184 mm, in a wavy hole of at least `holeMm`. */
export function flangeInRing(finish: Finish, edges: number, holeMm = 188): Pair {
  const random = new Random(edges);
  const flange = outline(edges, finish, random, (a) => 180 + 3 * Math.cos(7 * a) + 1.2 * Math.cos(31 * a));
  const hole = outline(edges, finish, random, (a) => holeMm + 2 + 2 * Math.cos(5 * a));
  return { name: finish, edges, fixed: [frame, hole], moving: [flange], pole: vec(3, -2) };
}

/** Circles of 180 and 181 mm and a pole, all within a few µm of one centre: no place is much nearer than any other. */
export function nearlyConcentric(edges: number): Pair {
  const [disc, hole] = [180, 181].map((radius) => outline(edges, 'smooth', new Random(0), () => radius));
  const { vertices } = disc as PathLoop;
  const moving: PathLoop = { kind: 'path', vertices: vertices.map(({ x, y, bulge }) => ({ x: x + 0.001, y, bulge })) };
  return { name: 'nearly concentric', edges, fixed: [frame, hole as PathLoop], moving: [moving], pole: vec(0, 0.002) };
}

/** What the hole is cut in. */
const frame = polygonLoop([vec(-230, -230), vec(230, -230), vec(230, 230), vec(-230, 230)]);

function outline(edges: number, finish: Finish, random: Random, radiusMm: (angle: number) => number): PathLoop {
  const vertices = Array.from({ length: edges }, (_, i): Vertex => {
    const angle = (2 * Math.PI * i) / edges;
    const noise = finish === 'noisy' ? random.between(-noiseMm, noiseMm) : 0;
    const bulge = finish === 'with arcs' ? (alternating[i % 4] as number) : 0;
    const { x, y } = polar(vec(0, 0), radiusMm(angle) + noise, angle);
    return { x, y, bulge };
  });
  return { kind: 'path', vertices };
}

const alternating = [0, 0.1, 0, -0.1];
