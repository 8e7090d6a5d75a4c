import type { PartDraft, PictureFile } from '../../../src/files/job-file.ts';
import { usualErrors } from '../../../src/intake/photo/touch-noise.ts';
import { mmIn } from '../../../src/job/length-text.ts';
import { NumberField } from '../../fields.tsx';
import { useLengths } from '../../lengths.ts';
import { photoWords as words } from '../../words/photo.ts';

interface Props {
  readonly part: PartDraft;
  readonly picture: PictureFile;
  readonly change: (changes: Partial<PictureFile>) => void;
}

/** How well points were touched and are known, and what was measured of the camera. */
export function HowWell({ part: { units }, picture, change }: Props) {
  const { touchErrorPx = usualErrors.touchErrorPx, knownError, cameraAway, planeDepth = 0 } = picture;
  const figures = useLengths(units);
  const usualKnown = usualErrors.knownErrorMm / mmIn(units);
  return (
    <details>
      <summary>{words.howWell}</summary>
      <div class="pair">
        <NumberField
          label={words.touchError}
          value={touchErrorPx}
          fits={(value) => value > 0}
          onSet={(value) => change({ touchErrorPx: value })}
          onClear={() => change({ touchErrorPx: undefined })}
        />
        <NumberField
          label={words.knownError}
          figures={figures}
          value={knownError ?? usualKnown}
          fits={(value) => value >= 0}
          onSet={(value) => change({ knownError: value })}
          onClear={() => change({ knownError: undefined })}
        />
        <NumberField
          label={words.cameraAway}
          figures={figures}
          value={cameraAway}
          fits={(value) => value > 0}
          onSet={(value) => change({ cameraAway: value })}
          onClear={() => change({ cameraAway: undefined })}
        />
        <NumberField
          label={words.planeDepth}
          figures={figures}
          value={planeDepth}
          onSet={(value) => change({ planeDepth: value })}
          onClear={() => change({ planeDepth: undefined })}
        />
      </div>
    </details>
  );
}
