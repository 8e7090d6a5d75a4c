import { commandContests } from './cases/command.ts';
import { distanceContests } from './cases/distance.ts';
import { sweepContests } from './cases/sweep.ts';
import { turnContests } from './cases/turn.ts';
import { type BenchCase, hold } from './contest.ts';
import { Clipper } from './peers/clipper.ts';
import { Geos } from './peers/geos.ts';

const geos = await Geos.start();
const clipper = await Clipper.start();
for (const suite of [distanceContests(geos), turnContests(geos), sweepContests(geos, clipper), commandContests()]) for (const c of suite) { const t = performance.now(); const r = hold(c); for (const x of r) console.log(x.name.padEnd(55), String(x.edges).padStart(7), x.oursMs.toFixed(4).padStart(10), (x.peer ?? '').padEnd(38), x.peerMs?.toFixed(3).padStart(10), x.ratio?.toFixed(2).padStart(9), x.atLeast ?? ''); console.log('   took', ((performance.now() - t)/1000).toFixed(1)); }
