import { buildOutlineTree } from '../../src/geometry/motion/outline-tree.ts';
import { passage } from '../../src/geometry/motion/passage.ts';
import { identity } from '../../src/geometry/plane/rigid.ts';
import { flangeInRing, turnOf } from './outlines.ts';
import { Geos } from './peers/geos.ts';
import { inRings, sampledDistanceMm } from './peers/sampled-distance.ts';

// `cold-run.js ours|peer EDGES`: one clearance over a turn in a process of its own; prints what it took, ms.

const [who, edges] = process.argv.slice(2);
const pair = flangeInRing('noisy', Number(edges));
const [rings, geos] = [inRings(pair), await Geos.start()];
const began = performance.now();
const distanceMm =
  who === 'ours'
    ? passage(buildOutlineTree(pair.fixed), buildOutlineTree(pair.moving), identity, turnOf(pair)).distanceMm
    : sampledDistanceMm(geos, rings, pair);
const tookMs = performance.now() - began;
if (!(distanceMm !== null && distanceMm > 0)) throw new Error(`no distance: ${distanceMm}`);
console.log(tookMs);
