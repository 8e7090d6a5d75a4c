import { useEffect, useRef } from 'preact/hooks';
import type { JobFile } from '../../../src/files/job-file.ts';
import type { App } from '../../app.ts';
import { NumberField } from '../../fields.tsx';
import { goesIn, type PlaceToRead, type Said, withGo, withReading } from '../../job/trial-edits.ts';
import { useLengths } from '../../lengths.ts';
import { today } from '../../today.ts';
import { trialWords as words } from '../../words/trial.ts';

interface FieldsProps {
  readonly job: JobFile;
  /** Null before anything is said. */
  readonly said: Said | null;
  readonly depth: number;
  readonly say: (said: Said) => void;
  readonly setDepth: (depth: number) => void;
}

/** What was found at a place: how thick the clay is, or whether it marked; and how deep the place lies. */
export function ReadingFields({ job: { fit }, said, depth, say, setDepth }: FieldsProps) {
  const figures = useLengths(fit.units);
  const mark = (touched: boolean, label: string) => (
    <button
      type="button"
      aria-pressed={said?.kind === 'mark' && said.touched === touched}
      onClick={() => say({ kind: 'mark', touched })}
    >
      {label}
    </button>
  );
  return (
    <div class="reading-fields">
      <NumberField
        label={words.clay}
        figures={figures}
        value={said?.kind === 'clay' ? said.thickness : undefined}
        fits={(thickness) => thickness >= 0}
        onSet={(thickness) => say({ kind: 'clay', thickness })}
      />
      <NumberField label={words.depth} figures={figures} value={depth} onSet={setDepth} />
      {mark(true, words.marked)}
      {mark(false, words.clear)}
    </div>
  );
}

interface NewReadingProps {
  readonly app: App;
  readonly job: JobFile;
}

/** The place that was tapped, until it is told what is there; the first begins a go. */
export function NewReading({ app, job }: NewReadingProps) {
  const { reading } = app.answers.trial;
  const place = reading.value;
  const form = useRef<HTMLElement>(null);
  const where = place?.at.join();
  useEffect(() => {
    if (where === undefined) return;
    form.current?.scrollIntoView({ block: 'nearest' });
    // the next Tab is in its first field, and no keyboard comes up over the buttons
    form.current?.focus({ preventScroll: true });
  }, [where]);
  useEffect(
    () => () => {
      reading.value = null;
    },
    [reading],
  );
  if (place === null) return null;
  const say = (said: Said): void => {
    reading.value = null;
    app.job.edit((now) => {
      const begun = goesIn(now).length === 0 ? withGo(now, today()) : now;
      return withReading(begun, goesIn(begun).length - 1, place, said);
    });
  };
  return (
    <section class="new-reading" tabIndex={-1} ref={form} aria-label={words.newReading}>
      <h2>{words.newReading}</h2>
      <Where app={app} job={job} place={place} />
      {goesIn(job).at(-1)?.stopped === undefined ? <p>{words.sayStop}</p> : null}
      <ReadingFields
        job={job}
        said={null}
        depth={place.depth}
        say={say}
        setDepth={(depth) => {
          reading.value = { ...place, depth };
        }}
      />
      <button
        type="button"
        onClick={() => {
          reading.value = null;
        }}
      >
        {words.leave}
      </button>
    </section>
  );
}

/** The section a place is on, and where the moving part stood. */
function Where({ app, job, place }: NewReadingProps & { readonly place: PlaceToRead }) {
  return (
    <p>
      {place.section}, {stoodText(app, job, place)}
    </p>
  );
}

export function stoodText(app: App, { fit }: JobFile, { position = 'home' }: Pick<PlaceToRead, 'position'>): string {
  return position === 'home' ? words.home : words.stood(position, fit.units, app.reader.units.value ?? fit.units);
}
