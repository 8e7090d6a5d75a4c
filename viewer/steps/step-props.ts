import type { JobFile } from '../../src/files/job-file.ts';
import type { App, State } from '../app.ts';
import type { Session } from '../session.ts';
import type { Pane } from '../stage/pane.ts';

/** What every step's panel is given. */
export interface StepProps {
  readonly app: App;
  readonly state: State;
  readonly job: JobFile;
  readonly session: Session;
  /** The pane that shows the joint, or the part being traced, from its face. */
  readonly pane: Pane;
  readonly side: Pane;
}
