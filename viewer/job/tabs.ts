/** Whether this tab is the one that keeps a job, or another is. */
export type Holder = 'here' | 'elsewhere';

/** What a tab does when another one has to do with the same job. */
export interface HoldOptions {
  /** Called when it changes; what `holdJob` found at first is in `held`. */
  readonly onHeld: (held: Holder) => void;
  /** Another tab has put the job on the disk. */
  readonly onKept: () => void;
  /** Resolves once what is under way is on the disk, before another tab takes over. */
  readonly beforeGiving: () => Promise<unknown>;
}

/** This tab's hold on a job. */
export interface Hold {
  held(): Holder;
  /** Makes this the tab that keeps the job; resolves once it is. The job is then to be opened anew from the disk. */
  takeOver(): Promise<void>;
  /** Tells the other tabs that the job was put on the disk. */
  tellKept(): void;
  /** Lets the job go, to a tab that waits for it. */
  release(): void;
}

type Message = 'kept' | 'give' | 'given';

/** How long another tab may take to put the last of its work on the disk, ms; one that sleeps is not waited for. */
const patienceMs = 2000;

/**
 * Holds a job for this tab, or learns that another tab does; resolves once that is known. When the tab that holds it
 * closes, the next in line does. Where the browser has no locks each tab holds it, and storage alone sees to it that
 * none writes over another.
 */
export async function holdJob(id: string, options: HoldOptions): Promise<Hold> {
  const name = `fettle-viewer-job-${id}`;
  const channel = channelOf(name);
  let held: Holder | null = null;
  let line = new AbortController();
  let letGo = (): void => {};
  let released = false;

  const turn = (now: Holder): void => {
    const before = held;
    held = now;
    if (before !== null && before !== now && !released) options.onHeld(now);
  };
  const claim = (asked: LockOptions): Promise<void> =>
    new Promise((known) => {
      const end = claimed(name, asked, () => {
        turn('here');
        known();
        return new Promise((done) => {
          letGo = done;
        });
      });
      end.then((how) => {
        if (how === 'no-locks') turn('here');
        else if (how !== 'let-go' && !released) {
          turn('elsewhere');
          line = new AbortController();
          void claim({ signal: line.signal });
        }
        known();
      });
    });

  if (channel !== null) {
    channel.onmessage = async ({ data }: MessageEvent<Message>) => {
      if (data === 'kept') options.onKept();
      if (data !== 'give' || held !== 'here') return;
      await options.beforeGiving();
      channel.postMessage('given' satisfies Message);
    };
  }
  await claim({ ifAvailable: true });
  return {
    held: () => held ?? 'here',
    async takeOver() {
      if (held === 'here') return;
      await askedFor(name);
      line.abort();
      await claim({ steal: true });
    },
    tellKept: () => channel?.postMessage('kept' satisfies Message),
    release() {
      released = true;
      line.abort();
      letGo();
      channel?.close();
    },
  };
}

/** Holds a lock as long as `whileHeld` lasts, and says how that ended; `missed` where another tab has it now. */
async function claimed(name: string, asked: LockOptions, whileHeld: () => Promise<void>) {
  try {
    return await navigator.locks.request(name, asked, async (lock) => {
      if (lock === null) return 'missed';
      await whileHeld();
      return 'let-go';
    });
  } catch (error) {
    if (asked.signal?.aborted) return 'let-go';
    return error instanceof DOMException && error.name === 'AbortError' ? 'taken' : 'no-locks';
  }
}

/** Resolves once the tab that holds the job has put its work on the disk, or has had its time. */
function askedFor(name: string): Promise<void> {
  const channel = channelOf(name);
  if (channel === null) return Promise.resolve();
  return new Promise<void>((done) => {
    setTimeout(done, patienceMs);
    channel.onmessage = ({ data }: MessageEvent<Message>) => {
      if (data === 'given') done();
    };
    channel.postMessage('give' satisfies Message);
  }).finally(() => channel.close());
}

/** Between the tabs on one job; null where the browser has no such thing, or denies it to this page. */
function channelOf(name: string): BroadcastChannel | null {
  try {
    return new BroadcastChannel(name);
  } catch {
    return null;
  }
}
