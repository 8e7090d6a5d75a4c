import type { JobFile } from '../../src/model/job-file.ts';
import type { App, State } from '../app.ts';

/** What every step's panel is given. */
export interface StepProps {
  readonly app: App;
  readonly state: State;
  readonly job: JobFile;
}
