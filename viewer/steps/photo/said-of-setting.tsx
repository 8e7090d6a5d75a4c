import type { PartDraft, PictureFile } from '../../../src/model/job-file.ts';
import type { Units } from '../../../src/words/units.ts';
import type { PictureSet } from '../../heavy/set-straight.ts';
import { errorIn, faultText, photoWords as words } from '../../words/photo.ts';
import { namesOfTouches } from './known-places.ts';

/**
 * The ± limit that a picture gives its part, in the part's units; null where none can be stated. A picture by two points
 * is reckoned with a lean of two degrees, since nothing shows it.
 */
export function statedError({ setting, errorMm, lean }: PictureSet, units: Units): number | null {
  if (!setting.ok || errorMm === null) return null;
  if (lean === null) return errorIn(units, errorMm);
  return lean.twoDegreesMm === null ? null : errorIn(units, errorMm + lean.twoDegreesMm);
}

/** A length that is stated in a part's units, with them. */
export const stated = (value: number, units: Units): string => `${value} ${units}`;

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
