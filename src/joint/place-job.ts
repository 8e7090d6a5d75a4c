import type { Reading } from '../files/finding.ts';
import { rigid } from '../geometry/plane/rigid.ts';
import { sub, vec } from '../geometry/plane/vec.ts';
import type { Fit, HolePair, Job } from '../job/job.ts';
import { boltNotices, boltsOf } from './bolts.ts';
import { coincidentDowels } from './coincident-dowels.ts';
import { dowelPlayMm } from './dowel-play.ts';
import { dowelNotices, dowelUp, pointPair } from './dowel-up.ts';
import { checkHand, handNotices } from './hand.ts';
import type { Joint } from './joint.ts';
import { moveCasting, moveHole } from './move-casting.ts';
import { pathNotices } from './path-notices.ts';
import { registrationRefusal } from './registration.ts';
import { traceNotices } from './trace-notices.ts';

/**
 * Dowels a job up: the fixed part shifted so that the crank axis is the origin, the moving part carried home by its
 * dowels, with what is to be said about dowels, hand, bolts and path. Findings where two dowel pairs stand on one place.
 * In mm and radians, looking at the fixed part's face, x right and y up; nothing is thrown.
 *
 * @example How well two dowels register, before anything is checked.
 * ```ts
 * import { readFileSync } from 'node:fs';
 * import { placeJob, readJob } from 'fettle';
 *
 * const fit = 'profiles/sae-3-adapter/adapter.fit.json';
 * const read = readJob(fit, (path) => ({ ok: true, value: readFileSync(path, 'utf8') }));
 * const joint = read.ok ? placeJob(read.value) : read;
 * if (!joint.ok) throw new Error(JSON.stringify(joint.findings));
 * const { dowelUp, bolts } = joint.value;
 * console.log(dowelUp.pairs.length, bolts.filter(({ linesUp }) => linesUp).length); // 2 10
 * ```
 */
export function placeJob(job: Job): Reading<Joint> {
  const findings = coincidentDowels(job.fit);
  return findings.length > 0 ? { ok: false, findings } : { ok: true, value: place(job) };
}

function place(job: Job): Joint {
  const toAxis = rigid(0, sub(vec(0, 0), job.fit.axis));
  const onAxis = ({ fixed, moving }: HolePair): HolePair => ({ fixed: moveHole(fixed, toAxis), moving });
  const { motion, ...dowelled } = dowelUp(job.fit.dowels.map(onAxis));
  const atHome = ({ fixed, moving }: HolePair): HolePair => ({ fixed, moving: moveHole(moving, motion) });
  const fit: Fit = {
    ...job.fit,
    dowels: job.fit.dowels.map(onAxis).map(atHome),
    bolts: job.fit.bolts.map(onAxis).map(atHome),
  };
  const hand = checkHand([...fit.dowels, ...fit.bolts].map(pointPair));
  const bolts = boltsOf(fit.bolts);
  const moving = moveCasting(job.moving, motion);
  const refusal = registrationRefusal({
    fit,
    movingHoles: moving.holes,
    files: job,
    spacingErrorMm: dowelled.spacingErrorMm,
    bolts,
    hand,
  });
  return {
    fit,
    fixed: moveCasting(job.fixed, toAxis),
    moving,
    rotating: job.rotating,
    dowelUp: { ...dowelled, hand: hand.hand },
    bolts,
    dowelPlayMm: dowelPlayMm(fit.dowels),
    fitRmsMm: dowelled.rmsMm ?? 0,
    refusal,
    notices: [
      ...(refusal === null ? [] : [refusal]),
      ...dowelNotices(dowelled),
      ...handNotices(hand),
      ...boltNotices(fit.bolts),
      ...pathNotices(fit, fit.dowels),
      ...[job.fixed, job.moving, ...job.rotating].flatMap(traceNotices),
    ],
  };
}
