import type { JobFile, PictureFile } from '../../src/files/job-file.ts';

/** By what name a picture says at which depth a place is traced: only sections go by their names alone. */
export const depthName = (list: string, id: string): string => (list === 'sections' ? id : `${list}/${id}`);

/** A picture that knows a place by its new name. */
export function withPlaceNamed(picture: PictureFile, list: string, old: string, id: string): PictureFile {
  const { tracedDepths = {} } = picture;
  const before = depthName(list, old);
  if (!Object.hasOwn(tracedDepths, before)) return picture;
  const entries = Object.entries(tracedDepths).map(([name, depth]) => [
    name === before ? depthName(list, id) : name,
    depth,
  ]);
  return { ...picture, tracedDepths: Object.fromEntries(entries) };
}

/** The job whose pictures of one part know a hole by its new name. */
export function withTouchedHoleNamed(job: JobFile, part: string, old: string, id: string): JobFile {
  if (job.pictures === undefined) return job;
  const pictures = job.pictures.map((picture) =>
    picture.part !== part
      ? picture
      : { ...picture, touches: picture.touches.map((touch) => (touch.hole === old ? { ...touch, hole: id } : touch)) },
  );
  return { ...job, pictures };
}
