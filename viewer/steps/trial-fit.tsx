import { useEffect } from 'preact/hooks';
import { trialEnding } from '../../src/files/file-endings.ts';
import { fileText } from '../../src/files/file-text.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import type { TrialFile } from '../../src/files/trial-file.ts';
import type { App, State } from '../app.ts';
import { Group } from '../fields.tsx';
import type { TrialTold } from '../heavy/questions.ts';
import { InFull } from '../in-full.tsx';
import { download } from '../job/disk.ts';
import { jobFileName } from '../job/job-file-name.ts';
import { goesIn, trialIn, withGo, withoutLastGo } from '../job/trial-edits.ts';
import { today } from '../today.ts';
import '../trial.css';
import { trialWords as words } from '../words/trial.ts';
import { words as pageWords } from '../words.ts';
import type { StepProps } from './step-props.ts';
import { Go } from './trial/go.tsx';
import { pointAt, usePointing } from './trial/pointing.ts';
import { NewReading } from './trial/reading-fields.tsx';

/** What the trial fits say, in one line. */
export function trialFitLine({ history, trial: told }: State): string {
  const trial = history && trialIn(history.now);
  if (trial === null) return words.notBegun;
  if (told?.kind === 'told') return told.line;
  if (told?.kind === 'refused') return words.toPutRight(told.findings.length);
  const readings = trial.goes.reduce((sum, { readings = [] }) => sum + readings.length, 0);
  return words.read(trial.goes.length, readings);
}

export function TrialFit({ app, state, job, session, pane }: StepProps) {
  const fits = app.answers.trial;
  const units = app.reader.units.value;
  useEffect(() => {
    fits.foretell(job, units);
    fits.solve(job, units);
  }, [fits, job, units]);
  useEffect(() => () => fits.leave(), [fits]);
  const pointed = usePointing(app, pane);
  const trial = trialIn(job);
  const goes = goesIn(job);
  const places = state.planned?.tables.flatMap((table) => table.map(({ place }) => place)) ?? [];
  const refused = state.trial?.kind === 'refused' ? state.trial.findings : [];
  return (
    <>
      <Foretold texts={fits.foretold.value} />
      {state.checked === null ? null : <p>{words.tapIt}</p>}
      {state.checked === null ? null : <p class="by-key">{words.tapKey}</p>}
      <p role="status" class="pointed">
        {pointed}
      </p>
      <NewReading app={app} job={job} />
      {trial === null ? null : <Answer app={app} job={job} told={state.trial} />}
      {goes
        .map((go, index) => (
          <Go
            key={go.go}
            app={app}
            job={job}
            go={go}
            index={index}
            joint={state.checked?.joint ?? null}
            refused={refused}
            disagreeing={state.trial?.kind === 'told' ? state.trial.disagreeing : []}
            places={places}
            pane={pane}
          />
        ))
        .reverse()}
      <div class="jumps">
        <button type="button" onClick={() => app.job.edit((now) => withGo(now, today()))}>
          {words.addGo(goes.length + 1)}
        </button>
        {goes.length === 0 ? null : (
          <button type="button" onClick={() => app.job.edit(withoutLastGo)}>
            {words.removeGo(goes.length)}
          </button>
        )}
        {trial === null ? null : (
          <button type="button" onClick={() => saveTrial(job, trial)}>
            {words.save}
          </button>
        )}
      </div>
      <label class="opener">
        <span>{words.open}</span>
        <input
          type="file"
          accept=".json,application/json"
          onChange={(event) => session.openFiles(event.currentTarget.files ?? [])}
        />
      </label>
    </>
  );
}

const saveTrial = (job: JobFile, trial: TrialFile): void =>
  download({ name: jobFileName(job, trialEnding), mediaType: 'application/json', data: fileText(trial) });

function Foretold({ texts }: { readonly texts: readonly string[] | null }) {
  if (texts === null) return null;
  return (
    <Group name={words.foretold}>
      <ul class="foretold">
        {texts.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </Group>
  );
}

interface AnswerProps {
  readonly app: App;
  readonly job: JobFile;
  readonly told: TrialTold | null;
}

/** What all readings say together; what is wrong with one stands beside it. */
function Answer({ app, job, told }: AnswerProps) {
  const { isWorking, failure } = app.answers.trial;
  const elsewhere = told?.kind === 'refused' ? told.findings.filter(({ at }) => !at.startsWith('goes[')) : [];
  const next = told?.kind === 'told' ? told.measureNext : null;
  const shown = app.reader.units.value ?? job.fit.units;
  // where it stopped short nothing is home yet
  const isHome = (goesIn(job).at(-1)?.stopped ?? 'home') === 'home';
  const measureNext = (): void => {
    if (next === null) return;
    const on = { section: next.section, depthMm: next.depthMm };
    pointAt(app, { at: next.at, withinMm: Number.POSITIVE_INFINITY, on });
  };
  return (
    <section class="trial-answer" aria-label={words.answer}>
      <p role="status">{isWorking.value ? words.workingOut : ''}</p>
      {failure.value === '' ? null : <p role="alert">{pageWords.broke(failure.value)}</p>}
      {elsewhere.map((finding) => (
        <p key={finding.at} class="wrong" role="alert">
          {words.refusedElsewhere(finding)}
        </p>
      ))}
      {told?.kind !== 'told' ? null : (
        <>
          <p class="conclusion" data-conclusion={told.conclusion}>
            {told.line}
          </p>
          {next === null ? null : (
            <>
              <p>{words.measureNext(next, shown)}</p>
              {isHome ? (
                <button type="button" onClick={measureNext}>
                  {words.measureIt}
                </button>
              ) : null}
            </>
          )}
          <InFull text={() => told.text} />
        </>
      )}
    </section>
  );
}
