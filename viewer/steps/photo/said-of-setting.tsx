import type { PartDraft, PictureFile } from '../../../src/files/job-file.ts';
import type { PictureSet } from '../../heavy/set-straight.ts';
import { faultText, photoWords as words } from '../../words/photo.ts';
import { namesOfTouches } from './known-places.ts';
import { stated, statedError } from './stated-error.ts';

/** What a setting comes to, sentence by sentence. */
function saidOf(part: PartDraft, { touches }: PictureFile, set: PictureSet): readonly string[] {
  const { setting, camera, lean } = set;
  const { units } = part;
  const names = namesOfTouches(touches);
  if (!setting.ok) return setting.faults.map((fault) => faultText(fault, names, units));
  const { value } = setting;
  const error = statedError(set, units);
  const known = (i: number): string => names[i] ?? '';
  return [
    ...(error === null ? [] : [words.good(stated(error, units))]),
    ...(lean === null ? [] : [words.squareOnBlind(lean, units)]),
    ...(value.by === 'points' && touches.length === 4 ? [words.nothingToSpare] : []),
    ...(value.by === 'points' && touches.length === 5 ? [words.oneToSpare] : []),
    ...(value.agree ? [] : [words.disagree(value.suspects.map(known))]),
    ...(value.agree && value.noise.from === 'residuals' ? [words.scatter] : []),
    ...(value.mirrored ? [words.mirrored] : []),
    camera.ok
      ? words.camera(camera.value, units)
      : [...new Set(camera.faults.map((fault) => faultText(fault, names, units)))].join(' '),
  ];
}

interface Props {
  readonly part: PartDraft;
  readonly picture: PictureFile;
  readonly set: PictureSet | null;
}

export function SaidOfSetting({ part, picture, set }: Props) {
  const warns = set?.setting.ok && (!set.setting.value.agree || set.setting.value.mirrored);
  return (
    <div class={warns ? 'said' : 'told'} role="status">
      {picture.touches.length > 0 && set !== null && saidOf(part, picture, set).map((text) => <p key={text}>{text}</p>)}
    </div>
  );
}
