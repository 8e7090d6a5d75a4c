import type { JobFile, PictureFile } from '../../src/files/job-file.ts';

/** A picture that knows a section by its new name. */
export function withSectionNamed(picture: PictureFile, old: string, id: string): PictureFile {
  const { tracedDepths = {} } = picture;
  if (!Object.hasOwn(tracedDepths, old)) return picture;
  const entries = Object.entries(tracedDepths).map(([name, depth]) => [name === old ? id : name, depth]);
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
