import type { State } from '../app.ts';
import { words } from '../words.ts';
import { outlinesLine as lineOf } from './outlines/outlines-line.ts';
import { Tracing } from './outlines/tracing.tsx';
import type { StepProps } from './step-props.ts';

/** How far the outlines have come, in one line. */
export const outlinesLine = ({ history }: State): string => (history === null ? words.notYet : lineOf(history.now));

export const Outlines = ({ app, state, job, session, pane }: StepProps) => (
  <>
    <Tracing
      job={job}
      edit={(change, gesture) => app.edit(change, gesture)}
      part={state.part}
      setPart={(part) => app.trace(part)}
      pane={pane}
    />
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
