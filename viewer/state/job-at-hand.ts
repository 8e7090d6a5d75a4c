import { computed, signal } from '@preact/signals';
import type { JobFile } from '../../src/files/job-file.ts';
import { changed, type History, redone, startingWith, undone } from '../job/history.ts';

/** The job at hand and all it was; the only place where it changes. */
export class JobAtHand {
  readonly #history = signal<History<JobFile> | null>(null);
  /** Null before a job is open. */
  readonly history = computed(() => this.#history.value);
  readonly now = computed(() => this.#history.value?.now ?? null);

  open(job: JobFile): void {
    this.#history.value = startingWith(job);
  }

  /** Changes of one gesture are taken back together. */
  edit(change: (job: JobFile) => JobFile, gesture: string | null = null): void {
    const history = this.#history.peek();
    if (history !== null) this.#history.value = changed(history, change(history.now), gesture);
  }

  undo(): void {
    const history = this.#history.peek();
    this.#history.value = (history && undone(history)) ?? history;
  }

  redo(): void {
    const history = this.#history.peek();
    this.#history.value = (history && redone(history)) ?? history;
  }
}
