import { useState } from 'preact/hooks';
import type { JobFile } from '../../../src/files/job-file.ts';
import type { TrialReadingFile } from '../../../src/files/trial-file.ts';
import { mmIn } from '../../../src/job/length-text.ts';
import type { App } from '../../app.ts';
import { NumberField, TextField } from '../../fields.tsx';
import { withError, withNote } from '../../job/trial-edits.ts';
import { useLengths } from '../../lengths.ts';
import { trialWords as words } from '../../words/trial.ts';

/** What `readTrial` takes where nothing is said. */
const usualErrorMm = 0.1;

interface ErrorProps {
  readonly app: App;
  readonly job: JobFile;
  readonly index: number;
  readonly k: number;
  readonly reading: TrialReadingFile;
}

/** How well a reading was read, for the few that were read better or worse than most. */
export function ReadingError({ app, job: { fit }, index, k, reading: { error } }: ErrorProps) {
  const figures = useLengths(fit.units);
  const [wasSaid] = useState(error !== undefined);
  const set = (next: number | undefined): void => app.job.edit((now) => withError(now, index, k, next));
  return (
    <details class="more" open={wasSaid}>
      <summary>{words.more}</summary>
      <NumberField
        label={words.error}
        figures={figures}
        value={error}
        placeholder={figures.text(usualErrorMm / mmIn(fit.units))}
        fits={(limit) => limit > 0}
        onSet={set}
        onClear={() => set(undefined)}
      />
    </details>
  );
}

interface NoteProps {
  readonly app: App;
  readonly index: number;
  readonly note: string | undefined;
}

/** Whatever else there is to say of a go. */
export function Note({ app, index, note = '' }: NoteProps) {
  const [wasSaid] = useState(note !== '');
  return (
    <details class="more" open={wasSaid}>
      <summary>{words.more}</summary>
      <TextField label={words.note} value={note} onSet={(text) => app.job.edit((now) => withNote(now, index, text))} />
    </details>
  );
}
