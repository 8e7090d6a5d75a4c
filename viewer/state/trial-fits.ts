import { signal } from '@preact/signals';
import type { Reading } from '../../src/files/finding.ts';
import type { JobFile } from '../../src/files/job-file.ts';
import type { GoFile, TrialFile } from '../../src/files/trial-file.ts';
import type { Units } from '../../src/job/lengths.ts';
import { type Core, lastReply, nothingSaid } from '../core.ts';
import type { OpenedFile } from '../heavy/opened-job.ts';
import type { PlaceFound, PointedAt, TrialTold } from '../heavy/questions.ts';
import { type Carried, type PlaceToRead, type Stopped, trialIn } from '../job/trial-edits.ts';

interface Wanted {
  readonly job: JobFile;
  readonly units: Units | null;
}

/** What the trial fits of a job teach, and the place that is read now. */
export class TrialFits {
  /** Where it stops before anything is cut; null until that is known. */
  readonly foretold = signal<readonly string[] | null>(null);
  readonly isWorking = signal(false);
  readonly failure = signal('');
  /** The place whose reading is still to be told. */
  readonly reading = signal<PlaceToRead | null>(null);
  /** The reading that was touched on the pane, to be gone to in the list. */
  readonly touched = signal<string | null>(null);
  readonly #told = signal<{ readonly told: TrialTold; readonly of: JobFile } | null>(null);
  #wanted: Wanted | null = null;
  #foretoldOf: JobFile | null = null;
  /** For what the hand waits for. */
  readonly #live: Core;
  /** Knows the plan. */
  readonly #long: Core;

  constructor(live: Core, long: Core) {
    this.#live = live;
    this.#long = long;
  }

  /** What was said last, where it was said of this job as it is. */
  toldOf(job: JobFile): TrialTold | null {
    const last = this.#told.value;
    const isOfIt = last?.of.fit === job.fit && last.of.parts === job.parts && trialIn(last.of) === trialIn(job);
    return isOfIt ? last.told : null;
  }

  foretell(job: JobFile, units: Units | null): void {
    if (this.#foretoldOf?.fit !== job.fit || this.#foretoldOf.parts !== job.parts) this.foretold.value = null;
    this.#foretoldOf = job;
    this.#live.ask({ kind: 'foretell', units }, job, (reply) => {
      if (reply.kind === 'foretold') this.foretold.value = reply.texts;
    });
  }

  /**
   * Asks what the trial fits say, told in a unit. What is at work ends first, and then the newest is asked: a worker that
   * were ended over each new reading would have to plan anew.
   */
  async solve(job: JobFile, units: Units | null): Promise<void> {
    this.#wanted = { job, units };
    if (this.isWorking.peek()) return;
    this.isWorking.value = true;
    while (this.#wanted !== null) {
      const wanted = this.#wanted;
      this.#wanted = null;
      await this.#solve(wanted);
    }
    this.isWorking.value = false;
  }

  async #solve({ job, units }: Wanted): Promise<void> {
    const trial = trialIn(job);
    if (trial === null) return;
    this.failure.value = '';
    const ended = await this.#long.ask({ kind: 'trial', trial, units }, job, (reply) => {
      if (reply.kind === 'trial-told' && reply.told !== null) this.#told.value = { told: reply.told, of: job };
    });
    if (ended.how === 'failed') this.failure.value = ended.why;
  }

  /** Nobody waits for it any more. */
  leave(): void {
    this.#wanted = null;
    this.#long.drop('trial');
  }

  /** What lies under the hand at a go; null where no outline does. */
  async placeAt(job: JobFile, go: GoFile | null, pointed: PointedAt): Promise<PlaceFound | null> {
    const { reply } = await lastReply(this.#coreFor(go), { kind: 'place', go, pointed }, job).catch(() => nothingSaid);
    return reply?.kind === 'place-found' ? reply.found : null;
  }

  /** How the readings of a go come along where it stopped elsewhere; null where the same was asked again meanwhile. */
  async carried(job: JobFile, go: GoFile, stopped: Stopped | null): Promise<Carried | null> {
    const { reply } = await lastReply(this.#coreFor(go), { kind: 'carry', go, stopped }, job).catch(() => nothingSaid);
    return reply?.kind === 'carried' ? reply.carried : null;
  }

  /** Nothing has to be planned to know the castings as they were traced. */
  #coreFor(go: GoFile | null): Core {
    return (go?.cut ?? 'none') === 'none' ? this.#live : this.#long;
  }

  /** A trial file as it was opened. */
  async read(file: OpenedFile): Promise<Reading<TrialFile>> {
    const { reply } = await lastReply(this.#live, { kind: 'read-trial', file }, null).catch(() => nothingSaid);
    if (reply?.kind === 'trial-read') return reply.read;
    const finding = { file: file.name, at: '', found: 'a page that lost what it read', expected: 'the file again' };
    return { ok: false, findings: [finding] };
  }

  /** What was said was of another job. */
  forget(): void {
    this.foretold.value = null;
    this.reading.value = null;
    this.#told.value = null;
    this.failure.value = '';
  }
}
