import type { FitFile } from '../../src/files/fit-file.ts';
import type { PartFile } from '../../src/files/part-file.ts';
import { readJob } from '../../src/job/read-job.ts';
import type { Joint } from '../../src/joint/joint.ts';
import { moveCasting } from '../../src/joint/move-casting.ts';
import { placeJob } from '../../src/joint/place-job.ts';
import type { CastingPair } from './castings/casting-pair.ts';

/** Files read and dowelled up as the tool does it for anyone. */
export function jointOfFiles(fit: FitFile, fixed: PartFile, moving: PartFile): Joint {
  const files: Readonly<Record<string, unknown>> = { 'goes.fit.json': fit, [fit.fixed]: fixed, [fit.moving]: moving };
  const job = readJob('goes.fit.json', (path) => ({ ok: true, value: JSON.stringify(files[path]) }));
  const joint = job.ok ? placeJob(job.value) : job;
  if (!joint.ok) throw new Error(JSON.stringify(joint.findings));
  return joint.value;
}

/** The castings as they are, the moving one where its dowels let it sit. */
export function trueJoint({ fit, fixed, moving, seating }: CastingPair): Joint {
  const joint = jointOfFiles(fit, fixed, moving);
  return { ...joint, dowelPlayMm: 0, moving: moveCasting(joint.moving, seating) };
}
