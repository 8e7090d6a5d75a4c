import type { FitFile } from '../../src/files/fit-file.ts';
import type { PartFile } from '../../src/files/part-file.ts';
import type { Part } from '../../src/job/part.ts';
import { readJob } from '../../src/job/read-job.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { moveCasting } from '../../src/joint/move-casting.ts';
import { placeJob } from '../../src/joint/place-job.ts';
import type { Random } from '../support/random.ts';
import type { CastingPair } from './castings/casting-pair.ts';
import { tracedAgain } from './traced.ts';

/** Files read and dowelled up as the tool does it for anyone. */
export function jointOfFiles(fit: FitFile, fixed: PartFile, moving: PartFile): Joint {
  const files: Readonly<Record<string, unknown>> = { 'goes.fit.json': fit, [fit.fixed]: fixed, [fit.moving]: moving };
  const job = readJob('goes.fit.json', (path) => ({ ok: true, value: JSON.stringify(files[path]) }));
  const joint = job.ok ? placeJob(job.value) : job;
  if (!joint.ok) throw new Error(JSON.stringify(joint.findings));
  return joint.value;
}

/** What a builder plans on, and how it comes out when he traces one section of a part again. */
export interface Drawings {
  readonly joint: Joint;
  readonly tracedAgain: (part: Part, section: string, random: Random) => Drawings;
}

/** Files of tracings, with the error that their tracer states. */
export function drawingsOf(pair: CastingPair, parts: Record<Part, PartFile>, errorMm: number): Drawings {
  return {
    joint: jointOfFiles(pair.fit, parts.fixed, parts.moving),
    tracedAgain: (part, section, random) =>
      drawingsOf(pair, { ...parts, [part]: tracedAgain(pair[part], parts[part], section, errorMm, random) }, errorMm),
  };
}

/** Drawings of what needs no tracing: the castings themselves. */
export const exactly = (joint: Joint): Drawings => ({ joint, tracedAgain: () => exactly(joint) });

/** The castings as they are, the moving one where its dowels let it sit. */
export function trueJoint({ fit, fixed, moving, seating }: CastingPair): Joint {
  const joint = jointOfFiles(fit, fixed, moving);
  return { ...joint, dowelPlayMm: 0, moving: moveCasting(joint.moving, seating) };
}
