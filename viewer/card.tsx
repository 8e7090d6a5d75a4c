import { type App, type State, type StepName, stepNames } from './app.ts';
import { demoJob } from './job/demo-job.ts';
import { newJob } from './job/new-job.ts';
import { DowelUp, dowelUpLine } from './steps/dowel-up.tsx';
import { Grind, grindLine } from './steps/grind.tsx';
import { MarkOut, markOutLine } from './steps/mark-out.tsx';
import { OfferUp, offerUpLine } from './steps/offer-up.tsx';
import { Outlines, outlinesLine } from './steps/outlines.tsx';
import type { StepProps } from './steps/step-props.ts';
import { words } from './words.ts';

interface Step {
  readonly line: (state: State) => string;
  readonly Panel: (props: StepProps) => preact.ComponentChildren;
}

const steps: Readonly<Record<StepName, Step>> = {
  outlines: { line: outlinesLine, Panel: Outlines },
  'dowel-up': { line: dowelUpLine, Panel: DowelUp },
  'offer-up': { line: offerUpLine, Panel: OfferUp },
  grind: { line: grindLine, Panel: Grind },
  'mark-out': { line: markOutLine, Panel: MarkOut },
};

export interface Files {
  readonly openFiles: (files: Iterable<File>) => void;
  readonly save: () => void;
}

/** The job card: a line for each step that says how it stands, the present step opened. */
export function Card({ app, files }: { readonly app: App; readonly files: Files }) {
  const { state } = app;
  const job = state.history?.now;
  return (
    <>
      <header>
        <h1>{words.name}</h1>
        {job === undefined ? null : <JobButtons app={app} state={state} save={files.save} />}
      </header>
      {job === undefined ? (
        <Start app={app} files={files} />
      ) : (
        <>
          <p class="title">{job.fit.title}</p>
          <ol class="steps">
            {stepNames.map((name) => {
              const { line, Panel } = steps[name];
              const isOpen = state.step === name;
              return (
                <li key={name} class={isOpen ? 'open' : ''} data-step={name}>
                  <button type="button" class="line" aria-expanded={isOpen} onClick={() => app.goTo(name)}>
                    <strong>{words.steps[name]}</strong>
                    <span>{line(state)}</span>
                  </button>
                  {isOpen ? (
                    <div class="panel">
                      <Panel app={app} state={state} job={job} />
                    </div>
                  ) : null}
                </li>
              );
            })}
          </ol>
        </>
      )}
      <Telling app={app} state={state} />
    </>
  );
}

interface JobButtonsProps {
  readonly app: App;
  readonly state: State;
  readonly save: () => void;
}

const JobButtons = ({ app, state: { history }, save }: JobButtonsProps) => (
  <div class="job-buttons">
    <button type="button" disabled={history === null || history.past.length === 0} onClick={() => app.undo()}>
      {words.undo}
    </button>
    <button type="button" disabled={history === null || history.future.length === 0} onClick={() => app.redo()}>
      {words.redo}
    </button>
    <button type="button" onClick={save}>
      {words.save}
    </button>
  </div>
);

const Start = ({ app, files }: { readonly app: App; readonly files: Files }) => (
  <div class="start">
    <p>{words.invitation}</p>
    <label class="opener">
      <span>{words.open}</span>
      <input
        type="file"
        multiple
        accept=".json,application/json"
        onChange={(event) => files.openFiles(event.currentTarget.files ?? [])}
      />
    </label>
    <button type="button" onClick={() => app.open(newJob(words.newParts), 'outlines')}>
      {words.begin}
    </button>
    <button type="button" onClick={() => app.open(demoJob(), 'offer-up')}>
      {words.demo}
    </button>
  </div>
);

/** What goes on, what is missing and what went wrong, said where it is heard too. */
function Telling({ app, state: { working, findings, failure, notice } }: { readonly app: App; readonly state: State }) {
  const progress =
    working === null
      ? ''
      : working === 'starting'
        ? words.starting
        : words.working(working.step, working.done, working.of);
  return (
    <div class="telling">
      <p role="status">{progress === '' ? notice : progress}</p>
      {working === null ? null : (
        <button type="button" onClick={() => app.halt()}>
          {words.stop}
        </button>
      )}
      {failure === '' ? null : <p role="alert">{words.broke(failure)}</p>}
      {findings === '' ? null : <pre class="findings">{findings}</pre>}
    </div>
  );
}
