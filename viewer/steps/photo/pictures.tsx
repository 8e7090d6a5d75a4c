import type { JobFile, PartDraft, PictureFile } from '../../../src/files/job-file.ts';
import { picturesIn } from '../../job/picture-edits.ts';
import '../../photo.css';
import { photoWords as words } from '../../words/photo.ts';
import { stated, statedError } from './stated-error.ts';
import type { OpenPicture } from './use-picture.ts';

interface Props {
  readonly job: JobFile;
  readonly file: string;
  readonly part: PartDraft;
  /** The one that is shown beneath, or would be. */
  readonly shown: OpenPicture | null;
  readonly strength: number;
  readonly setStrength: (strength: number) => void;
  readonly show: (id: string) => void;
  readonly straighten: (id: string) => void;
  readonly bring: (files: FileList | null) => void;
}

/** The pictures of a part, the one to trace over, and how to add another. */
export function Pictures({ job, file, part, shown, strength, setStrength, show, straighten, bring }: Props) {
  const own = picturesIn(job).filter((picture) => picture.part === file);
  return (
    <section class="outlines photos" aria-label={words.pictures}>
      {own.length > 0 && (
        <ul class="places">
          {own.map((picture) => (
            <li key={picture.id}>
              <button type="button" class="line" onClick={() => straighten(picture.id)}>
                {lineOf(part, picture, shown)}
              </button>
              {own.length > 1 && picture.id !== shown?.picture.id && (
                <button type="button" class="quiet" onClick={() => show(picture.id)}>
                  {words.show}
                </button>
              )}
              {picture.id === shown?.picture.id && shown.set?.setting.ok && (
                <label class="field strength">
                  <span>{words.strength}</span>
                  <input
                    type="range"
                    min="0"
                    max="1"
                    step="0.05"
                    value={strength}
                    onInput={({ currentTarget }) => setStrength(Number(currentTarget.value))}
                  />
                </label>
              )}
            </li>
          ))}
        </ul>
      )}
      <Bringers bring={bring} isFirst={own.length === 0} />
    </section>
  );
}

function lineOf({ units, traceError }: PartDraft, picture: PictureFile, shown: OpenPicture | null): string {
  const set = shown?.picture.id === picture.id ? shown.set : null;
  const isSet = set?.setting.ok ?? picture.touches.length >= (picture.squareOn ? 2 : 4);
  const error = set === null ? null : statedError(set, units);
  return [
    picture.name,
    isSet ? words.setBy(picture.touches.length) : words.notSetYet,
    ...(set?.setting.ok && !set.setting.value.agree ? [words.inDoubt] : []),
    ...(error === null ? [] : [words.goodTo(stated(error, units))]),
    ...(error !== null && error === traceError ? [words.errorWritten(stated(error, units))] : []),
  ].join(' · ');
}

const kinds = 'image/jpeg,image/png,image/webp,.jpg,.jpeg,.png,.webp';

function Bringers({ bring, isFirst }: { readonly bring: Props['bring']; readonly isFirst: boolean }) {
  const chosen = ({ currentTarget }: Event & { readonly currentTarget: HTMLInputElement }): void => {
    bring(currentTarget.files);
    // the same file may be chosen again
    currentTarget.value = '';
  };
  return (
    <>
      {isFirst && <p class="hint">{words.invitation}</p>}
      <label class="opener">
        <span>{words.add}</span>
        <input type="file" accept={kinds} onChange={chosen} />
      </label>
      <label class="opener camera">
        <span>{words.take}</span>
        <input type="file" accept={kinds} capture="environment" onChange={chosen} />
      </label>
    </>
  );
}
