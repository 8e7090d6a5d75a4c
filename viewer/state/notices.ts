import { signal } from '@preact/signals';

/** A question with what can be done about it. */
export interface Prompt {
  readonly text: string;
  readonly choices: readonly { readonly label: string; readonly choose: () => void }[];
}

/** What is said to the builder, and what the builder has to settle. */
export class Notices {
  readonly notice = signal('');
  /** Where the job is kept: beside the notice, never in its place, as a refusal must stay until it is read. */
  readonly keeping = signal('');
  /** What was read of the file brought in last. */
  readonly read = signal('');
  /** Null most of the time. */
  readonly asked = signal<Prompt | null>(null);

  tell(notice: string): void {
    this.notice.value = notice;
  }

  tellKeeping(text: string): void {
    this.keeping.value = text;
  }

  tellRead(text: string): void {
    this.read.value = text;
  }

  /** Puts something to the builder; a choice takes the question away. */
  put(text: string, choices: Prompt['choices']): void {
    const settled = (choose: () => void) => () => {
      this.asked.value = null;
      choose();
    };
    this.asked.value = { text, choices: choices.map(({ label, choose }) => ({ label, choose: settled(choose) })) };
  }
}
