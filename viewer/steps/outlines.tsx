import { useState } from 'preact/hooks';
import type { JobFile } from '../../src/files/job-file.ts';
import { mmIn } from '../../src/job/length-text.ts';
import { axisMark } from '../../src/words/names.ts';
import type { State } from '../app.ts';
import type { XY } from '../job/arc.ts';
import { amended, withPart } from '../job/part-edits.ts';
import { picturesIn } from '../job/picture-edits.ts';
import { photoWords } from '../words/photo.ts';
import { words } from '../words.ts';
import type { Axis } from './outlines/handles.tsx';
import { outlinesLine as lineOf } from './outlines/outlines-line.ts';
import { Tracing } from './outlines/tracing.tsx';
import { ErrorQuestion } from './photo/error-question.tsx';
import { overPicture } from './photo/over-picture.ts';
import { Pictures } from './photo/pictures.tsx';
import { SetStraight } from './photo/set-straight.tsx';
import { stated, statedError } from './photo/stated-error.ts';
import { usePicture } from './photo/use-picture.ts';
import type { StepProps } from './step-props.ts';

/** How far the outlines have come, in one line. */
export const outlinesLine = ({ history }: State): string => (history === null ? words.notYet : lineOf(history.now));

/** Strong enough to trace over, weak enough for lines on it. */
const usualStrength = 0.8;

/** Outlines traced by hand or brought in files; or, while a picture is set straight, that alone. */
export function Outlines({ app, state, job, session, pane }: StepProps) {
  const [shownId, show] = useState<string | null>(null);
  const [strength, setStrength] = useState(usualStrength);
  const [askedError, askError] = useState<number | null>(null);
  const [said, say] = useState('');
  const file = state.part;
  const part = job.parts[file];
  const own = picturesIn(job).filter((picture) => picture.part === file);
  const setting = own.find(({ id }) => id === state.picture);
  const shown = setting ?? own.find(({ id }) => id === shownId) ?? own.at(-1);
  const opened = usePicture(app, part, shown);

  const write = (error: number): void => {
    app.job.edit((now) => withPart(now, file, (old) => amended(old, { traceError: error })));
    askError(null);
    say(photoWords.errorWritten(stated(error, part?.units ?? 'mm')));
  };
  /** Back to the tracing; what the picture is good to is the part's tracing error from now on, where it is not another. */
  const done = (): void => {
    app.reader.picture.value = null;
    if (part === undefined || opened?.set == null || !opened.set.setting.ok) return;
    show(opened.picture.id);
    const error = statedError(opened.set, part.units);
    const { agree } = opened.set.setting.value;
    say(agree ? '' : photoWords.noErrorWritten);
    if (!agree || error === null || error === part.traceError) return;
    if (part.traceError === undefined) write(error);
    else askError(error);
  };
  if (setting !== undefined && opened !== null && part !== undefined)
    return <SetStraight key={setting.id} app={app} job={job} part={part} opened={opened} pane={pane} onDone={done} />;
  return (
    <>
      {askedError !== null && part !== undefined && (
        <ErrorQuestion part={part} error={askedError} write={() => write(askedError)} leave={() => askError(null)} />
      )}
      <p class="told" role="status">
        {said}
      </p>
      <ReadOfFile text={app.notices.read.value} />
      <Tracing
        job={job}
        edit={(change, gesture) => app.job.edit(change, gesture)}
        part={file}
        setPart={(next) => {
          app.reader.part.value = next;
        }}
        pane={pane}
        axis={axisIn(job, file, state)}
        read={app.notices.read.value}
        over={overPicture(part?.units ?? 'mm', opened, strength, (asked) => app.answers.pulled(asked))}
      />
      {part !== undefined && (
        <Pictures
          job={job}
          file={file}
          part={part}
          shown={opened}
          strength={strength}
          setStrength={setStrength}
          show={show}
          straighten={(id) => {
            app.reader.picture.value = id;
          }}
          bring={(files) => session.openFiles(files ?? [])}
        />
      )}
      <label class="opener">
        <span>{words.openOutlines}</span>
        <input
          type="file"
          multiple
          accept=".csv,.txt,.dxf,.svg,.json"
          onChange={(event) => session.openFiles(event.currentTarget.files ?? [])}
        />
      </label>
    </>
  );
}

/** The axis in a part's own drawing and units, by its own name. */
function axisIn(job: JobFile, file: string, state: State): Axis | null {
  const at = crankIn(job, file, state);
  const { axis, rotating = [] } = job.fit;
  return at && { at, name: axisMark({ fit: { axisHole: typeof axis === 'string' ? axis : null }, rotating }) };
}

/** Where that is; an unpaired part is laid on it as drawn. */
function crankIn({ fit, parts }: JobFile, file: string, { checked }: State): XY | null {
  const part = parts[file];
  if (file === fit.fixed)
    return typeof fit.axis === 'string' ? (part?.holes?.find(({ id }) => id === fit.axis)?.at ?? null) : fit.axis;
  if (file !== fit.moving || part === undefined) return null;
  if ((fit.dowels ?? []).length === 0) return [0, 0];
  const mm = mmIn(part.units);
  return checked && [checked.crankInMoving.x / mm, checked.crankInMoving.y / mm];
}

/** What a file brought, its first line before the rest. */
function ReadOfFile({ text }: { readonly text: string }) {
  const [first = '', ...rest] = text.split('\n');
  if (first === '') return null;
  return (
    <details>
      <summary>{first}</summary>
      <pre>{rest.join('\n')}</pre>
    </details>
  );
}
