import type { Finding } from '../../../src/files/finding.ts';
import type { JobFile } from '../../../src/files/job-file.ts';
import type { GoFile, TrialReadingFile } from '../../../src/files/trial-file.ts';
import { mmIn } from '../../../src/job/length-text.ts';
import type { Joint } from '../../../src/joint/joint.ts';
import type { App } from '../../app.ts';
import { Group } from '../../fields.tsx';
import { type Stopped, withDepth, withoutReading, withSaid, withStopped } from '../../job/trial-edits.ts';
import type { Pane } from '../../stage/pane.ts';
import { withRound } from '../../stage/view.ts';
import { trialWords as words } from '../../words/trial.ts';
import { words as pageWords } from '../../words.ts';
import { Cut } from './cut.tsx';
import { Faces } from './faces.tsx';
import { Note, ReadingError } from './more.tsx';
import { ReadingFields, stoodText } from './reading-fields.tsx';
import { Stop } from './stop.tsx';

interface Props {
  readonly app: App;
  readonly job: JobFile;
  readonly go: GoFile;
  readonly index: number;
  /** Null before the job is worked out. */
  readonly joint: Joint | null;
  readonly refused: readonly Finding[];
  readonly disagreeing: readonly { readonly id: string; readonly expectedMm: number }[];
  readonly places: readonly number[];
  readonly pane: Pane;
}

/** One trial fit: what had come off, where it stopped, and what was read. */
export function Go({ app, job, go, index, joint, refused, disagreeing, places, pane }: Props) {
  const of = (place: string): Finding[] => refused.filter(({ at }) => at.startsWith(`goes[${index}]${place}`));
  const readings = go.readings ?? [];
  const setStopped = async (stopped: Stopped | undefined): Promise<void> => {
    const carried = await app.answers.trial.carried(job, go, stopped ?? null);
    app.job.edit((now) => withStopped(now, index, stopped, carried ?? nothingCarried));
  };
  const { touched } = app.answers.trial;
  const goTo = (row: HTMLElement | null): void => {
    if (row === null) return;
    touched.value = null;
    row.scrollIntoView({ block: 'nearest' });
    row.focus({ preventScroll: true });
  };
  return (
    <Group name={words.go(go.go, go.date)}>
      <Cut app={app} job={job} cut={go.cut ?? 'none'} index={index} places={places} />
      <Refused findings={[...of('.cut'), ...of('.go')]} />
      <Stop job={job} stopped={go.stopped} dowels={joint?.fit.dowels ?? []} onSet={setStopped} />
      <Refused findings={of('.stopped')} />
      {readings.length === 0 ? null : (
        <ol class="readings">
          {readings.map((reading, k) => (
            <li key={reading.id} tabIndex={-1} ref={touched.value === reading.id ? goTo : null}>
              <button
                type="button"
                class="place"
                title={pageWords.showOnDrawing}
                onClick={() => pane.goTo(withRound(extentOf(job, reading)))}
              >
                {words.reading(reading.id, reading.section)}
              </button>
              <span class="stood">{stoodText(app, job, reading)}</span>
              <button
                type="button"
                aria-label={words.removeReading(reading.id)}
                onClick={() => app.job.edit((now) => withoutReading(now, index, k))}
              >
                ×
              </button>
              <ReadingFields
                job={job}
                said={reading}
                depth={reading.depth}
                say={(said) => app.job.edit((now) => withSaid(now, index, k, said))}
                setDepth={(depth) => app.job.edit((now) => withDepth(now, index, k, depth))}
              />
              <ReadingError app={app} job={job} index={index} k={k} reading={reading} />
              <Refused findings={of(`.readings[${k}]`)} />
              {disagreeing
                .filter(({ id }) => id === reading.id)
                .map(({ id, expectedMm }) => (
                  <p key={id} class="wrong">
                    {words.disagrees(expectedMm, app.reader.units.value ?? job.fit.units)}
                  </p>
                ))}
            </li>
          ))}
        </ol>
      )}
      <Faces app={app} job={job} index={index} faces={go.faces ?? []} joint={joint} />
      <Note app={app} index={index} note={go.note} />
    </Group>
  );
}

const nothingCarried = { was: 'home', is: 'home', depths: {} } as const;

/** What is wrong, beside what it is wrong with. */
const Refused = ({ findings }: { readonly findings: readonly Finding[] }) => (
  <>
    {findings.map((finding) => (
      <p key={finding.at} class="wrong" role="alert">
        {words.refused(finding)}
      </p>
    ))}
  </>
);

function extentOf({ fit }: JobFile, { at: [x, y] }: TrialReadingFile) {
  const [xMm, yMm] = [x * mmIn(fit.units), y * mmIn(fit.units)];
  return { minX: xMm, maxX: xMm, minY: yMm, maxY: yMm };
}
