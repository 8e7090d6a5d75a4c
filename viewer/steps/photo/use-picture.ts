import { useEffect, useState } from 'preact/hooks';
import type { PartDraft, PictureFile } from '../../../src/files/job-file.ts';
import type { App } from '../../app.ts';
import type { PictureSet } from '../../heavy/set-straight.ts';
import { askedOfPicture } from './asked-of-picture.ts';
import { type LoadedPicture, loadedPicture } from './loaded-picture.ts';

/** A picture as it has come so far: `loaded` is null while it opens, and where it cannot be shown it is `broken`. */
export interface OpenPicture {
  readonly picture: PictureFile;
  readonly loaded: LoadedPicture | null;
  readonly broken: boolean;
  /** What the core said last; of its touches as they were then, for the moment. */
  readonly set: PictureSet | null;
}

/** Opens a picture of a part and keeps asking how it lies, as its touches and the part change. */
export function usePicture(
  app: App,
  part: PartDraft | undefined,
  picture: PictureFile | undefined,
): OpenPicture | null {
  const [opened, setOpened] = useState<{ data: string; loaded: LoadedPicture | null } | null>(null);
  const [said, setSaid] = useState<{ id: string; set: PictureSet } | null>(null);
  const data = picture?.data ?? null;
  useEffect(() => {
    if (picture === undefined || data === null) return;
    let wanted = true;
    loadedPicture(picture).then((loaded) => {
      if (wanted) setOpened({ data, loaded });
    });
    return () => {
      wanted = false;
    };
  }, [data]);
  const isOpen = opened !== null && opened.data === data;
  const loaded = isOpen ? opened.loaded : null;
  useEffect(() => {
    if (part === undefined || picture === undefined || loaded === null) return;
    app.answers.setStraight(askedOfPicture(part, picture, loaded), (set) => setSaid({ id: picture.id, set }));
  }, [app, part, picture, loaded]);
  if (picture === undefined) return null;
  return { picture, loaded, broken: isOpen && loaded === null, set: said?.id === picture.id ? said.set : null };
}
