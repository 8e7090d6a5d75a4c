import { useEffect } from 'preact/hooks';
import type { App, State } from './app.ts';
import { ChoiceField } from './fields.tsx';
import { newJob } from './job/new-job.ts';
import { ShownUnits } from './lengths.ts';
import type { Session } from './session.ts';
import type { Pane } from './stage/pane.ts';
import { type StepName, stepNames } from './state/step-names.ts';
import { DowelUp, dowelUpLine } from './steps/dowel-up.tsx';
import { Grind, grindLine } from './steps/grind.tsx';
import { MarkOut, markOutLine } from './steps/mark-out.tsx';
import { OfferUp, offerUpLine } from './steps/offer-up.tsx';
import { Outlines, outlinesLine } from './steps/outlines.tsx';
import type { StepProps } from './steps/step-props.ts';
import { TrialFit, trialFitLine } from './steps/trial-fit.tsx';
import { Wants } from './steps/wants.tsx';
import { wantsUpTo } from './words/wants.ts';
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
  'trial-fit': { line: trialFitLine, Panel: TrialFit },
};

/** How a step stands; what it waits for where nothing is known yet, though tracing has its own progress to tell. */
function lineOf(name: StepName, state: State): string {
  const [first] = name === 'outlines' || state.checked !== null ? [] : wantsUpTo(state.wants, name);
  return first?.text ?? steps[name].line(state);
}

interface CardProps {
  readonly app: App;
  readonly session: Session;
  readonly pane: Pane;
  readonly side: Pane;
}

/** The job card: a line for each step that says how it stands, the present step opened. */
export function Card({ app, session, pane, side }: CardProps) {
  const state = app.state.value;
  const [step, units] = [app.reader.step.value, app.reader.units.value];
  const job = state.history?.now;
  const isOpen = job !== undefined;
  useEffect(() => {
    if (isOpen) document.querySelector('.open > .line')?.scrollIntoView({ block: 'nearest' });
  }, [isOpen, step]);
  return (
    <ShownUnits.Provider value={units}>
      <header>
        <h1>{words.name}</h1>
        {job === undefined ? null : <JobButtons app={app} state={state} save={() => session.save()} />}
      </header>
      {job === undefined ? (
        <Start session={session} />
      ) : (
        <>
          <p class="title">{job.fit.title}</p>
          <ol class="steps">
            {stepNames.map((name) => {
              const { Panel } = steps[name];
              const isOpen = step === name;
              return (
                <li key={name} class={isOpen ? 'open' : ''} data-step={name}>
                  <button
                    type="button"
                    class="line"
                    aria-expanded={isOpen}
                    onClick={() => {
                      app.reader.step.value = name;
                    }}
                  >
                    <strong>{words.steps[name]}</strong>
                    <span>{lineOf(name, state)}</span>
                  </button>
                  {isOpen ? (
                    <div class="panel">
                      <Wants app={app} wants={wantsUpTo(state.wants, name)} />
                      <Panel app={app} state={state} job={job} session={session} pane={pane} side={side} />
                    </div>
                  ) : null}
                </li>
              );
            })}
          </ol>
          <ChoiceField
            label={words.lengthsIn}
            value={units ?? 'files'}
            choices={words.lengthUnits}
            onSet={(chosen) => app.reader.readLengthsIn(chosen === 'files' ? null : chosen)}
          />
        </>
      )}
      <Telling app={app} />
    </ShownUnits.Provider>
  );
}

interface JobButtonsProps {
  readonly app: App;
  readonly state: State;
  readonly save: () => void;
}

const JobButtons = ({ app, state: { history }, save }: JobButtonsProps) => (
  <div class="job-buttons">
    <button type="button" disabled={history === null || history.past.length === 0} onClick={() => app.job.undo()}>
      {words.undo}
    </button>
    <button type="button" disabled={history === null || history.future.length === 0} onClick={() => app.job.redo()}>
      {words.redo}
    </button>
    <button type="button" onClick={save}>
      {words.save}
    </button>
  </div>
);

const Start = ({ session }: { readonly session: Session }) => (
  <div class="start">
    <p>{words.invitation}</p>
    <label class="opener">
      <span>{words.open}</span>
      <input
        type="file"
        multiple
        accept=".json,application/json"
        onChange={(event) => session.openFiles(event.currentTarget.files ?? [])}
      />
    </label>
    <button type="button" onClick={() => session.open(newJob(words.newParts), null)}>
      {words.begin}
    </button>
    <button type="button" onClick={() => session.openDemo()}>
      {words.demo}
    </button>
  </div>
);

/** What goes on, what is missing and what went wrong, said where it is heard too. */
function Telling({ app }: { readonly app: App }) {
  const { failure } = app.answers;
  const asked = app.notices.asked.value;
  return (
    <div class="telling">
      <Bar app={app} />
      {asked === null ? null : (
        <div role="alertdialog" aria-label={asked.text} ref={(dialog) => dialog?.scrollIntoView({ block: 'nearest' })}>
          <p>{asked.text}</p>
          {asked.choices.map(({ label, choose }) => (
            <button key={label} type="button" onClick={choose}>
              {label}
            </button>
          ))}
        </div>
      )}
      {failure.value === '' ? null : <p role="alert">{words.broke(failure.value)}</p>}
    </div>
  );
}

/** How far the work has come; alone, so that nothing else is painted as it goes on. */
function Bar({ app: { answers, notices } }: { readonly app: App }) {
  const working = answers.working.value;
  if (working === null)
    return <p role="status">{[notices.notice.value, notices.keeping.value].filter((said) => said !== '').join(' ')}</p>;
  return (
    <>
      <p role="status">
        {working === 'starting' ? words.starting : words.working(working.step, working.done, working.of)}
      </p>
      <button type="button" onClick={() => answers.halt()}>
        {words.stop}
      </button>
    </>
  );
}
