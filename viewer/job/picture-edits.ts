import type { JobFile, PartDraft, PictureFile, TouchFile } from '../../src/files/job-file.ts';
import type { XY } from './arc.ts';
import { amended } from './part-edits.ts';

export const picturesIn = (job: JobFile): readonly PictureFile[] => job.pictures ?? [];

export const pictureOf = (job: JobFile, id: string | null): PictureFile | undefined =>
  picturesIn(job).find((picture) => picture.id === id);

/** What a picture is before anything is known of it but its bytes. */
export type NewPicture = Pick<PictureFile, 'part' | 'name' | 'mediaType' | 'data'>;

/** The least number that no picture goes by. */
export function freshPictureId(job: JobFile): string {
  const taken = new Set(picturesIn(job).map(({ id }) => id));
  let n = 1;
  while (taken.has(`picture ${n}`)) n++;
  return `picture ${n}`;
}

export const withPicture = (job: JobFile, id: string, picture: NewPicture): JobFile => ({
  ...job,
  pictures: [...picturesIn(job), { id, ...picture, touches: [] }],
});

export function withoutPicture(job: JobFile, id: string): JobFile {
  const pictures = picturesIn(job).filter((picture) => picture.id !== id);
  const { pictures: _, ...rest } = job;
  return pictures.length === 0 ? rest : { ...rest, pictures };
}

/** Changes what is said of a picture; undefined takes a value away. */
export function withPictureChanged(job: JobFile, id: string, changes: Partial<Omit<PictureFile, 'id'>>): JobFile {
  const pictures = picturesIn(job).map((old) => (old.id === id ? amended<PictureFile>(old, changes) : old));
  return { ...job, pictures };
}

function withTouches(job: JobFile, id: string, change: (touches: readonly TouchFile[]) => TouchFile[]): JobFile {
  const picture = pictureOf(job, id);
  return picture === undefined ? job : withPictureChanged(job, id, { touches: change(picture.touches) });
}

/** To a hundredth of a pixel, finer than anyone touches. */
const hundredths = ([x, y]: XY): [number, number] => [Math.round(x * 100) / 100 + 0, Math.round(y * 100) / 100 + 0];

/** A place touched in the picture; a hole that was touched before is touched anew. */
export const withTouch = (job: JobFile, id: string, touch: TouchFile): JobFile =>
  withTouches(job, id, (touches) => [
    ...touches.filter(({ hole }) => hole === undefined || hole !== touch.hole),
    { ...touch, px: hundredths(touch.px) },
  ]);

export const withTouchChanged = (
  job: JobFile,
  id: string,
  index: number,
  changes: Partial<Pick<TouchFile, 'px' | 'at'>>,
): JobFile =>
  withTouches(job, id, (touches) =>
    touches.map((touch, i) => {
      if (i !== index) return touch;
      const next = { ...touch, ...changes };
      return { ...next, px: hundredths(next.px) };
    }),
  );

export const withoutTouch = (job: JobFile, id: string, index: number): JobFile =>
  withTouches(job, id, (touches) => touches.filter((_, i) => i !== index));

/** Where a touched point is in the part's drawing: where its hole is now, if it is one. */
export function placeOfTouch(part: PartDraft, { hole, at }: TouchFile): XY {
  return (hole === undefined ? undefined : part.holes?.find(({ id }) => id === hole))?.at ?? at;
}

/** Two points at a distance and nothing else known: the first becomes the drawing's origin, the second lies on its x. */
export const withDistance = (job: JobFile, id: string, distance: number): JobFile =>
  withTouches(job, id, (touches) =>
    touches.map(({ px }, i): TouchFile => ({ px, at: i === 0 ? [0, 0] : [distance, 0] })),
  );
