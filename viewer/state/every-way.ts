import { signal } from '@preact/signals';
import type { JobFile } from '../../src/files/job-file.ts';
import type { Units } from '../../src/job/lengths.ts';
import type { Met } from '../../src/ways/meetings.ts';
import type { WayPoint } from '../../src/ways/way-along.ts';
import { type Core, lastReply, nothingSaid } from '../core.ts';
import type { WaysTold } from '../heavy/questions.ts';

/** The turns there is room for, degrees. */
export interface TurnsAsked {
  readonly leastDeg: number;
  readonly mostDeg: number;
}

interface Asked {
  readonly job: JobFile;
  readonly turns: TurnsAsked;
  readonly units: Units | null;
}

const widely: TurnsAsked = { leastDeg: -45, mostDeg: 45 };
const degree = Math.PI / 180;

/** Every way in of a job, asked for by the reader and only while he looks at it. */
export class EveryWay {
  readonly turns = signal(widely);
  readonly isWanted = signal(false);
  readonly isWorking = signal(false);
  readonly failure = signal('');
  readonly #told = signal<(Asked & { readonly told: WaysTold }) | null>(null);
  /** For what the hand waits for. */
  readonly #live: Core;
  readonly #long: Core;

  constructor(live: Core, long: Core) {
    this.#live = live;
    this.#long = long;
  }

  /** What was said last, where it holds of this job: another way in leaves it as it is. */
  toldOf(job: JobFile): WaysTold | null {
    const last = this.#told.value;
    return last !== null && isSameButTheWay(last.job, job) ? last.told : null;
  }

  /** Whether all of it was said as it would be now. */
  isTold({ job, turns, units }: Asked): boolean {
    const last = this.#told.value;
    return last !== null && last.turns === turns && last.units === units && isSameButTheWay(last.job, job);
  }

  async ask(asked: Asked): Promise<void> {
    const { job, turns, units } = asked;
    this.isWorking.value = true;
    this.failure.value = '';
    const between = { fromRad: turns.leastDeg * degree, toRad: turns.mostDeg * degree };
    const ended = await this.#long.ask({ kind: 'ways', turns: between, units }, job, (reply) => {
      if (reply.kind === 'ways-told' && reply.told !== null) this.#told.value = { ...asked, told: reply.told };
    });
    if (ended.how === 'dropped') return;
    if (ended.how === 'failed') this.failure.value = ended.why;
    this.isWorking.value = false;
  }

  /** Nobody waits for it any more, or it is to be asked of another job. */
  drop(): void {
    this.#long.drop('ways');
    this.isWorking.value = false;
  }

  /** What is in the way at a turn and a stand-off; null where the same was asked again meanwhile. */
  async metAt(job: JobFile, at: WayPoint): Promise<Met | null> {
    const { reply } = await lastReply(this.#live, { kind: 'met', at }, job).catch(() => nothingSaid);
    return reply?.kind === 'met' ? reply.met : null;
  }

  /** What was said was of another job. */
  forget(): void {
    this.turns.value = widely;
    this.isWanted.value = false;
    this.failure.value = '';
    this.#told.value = null;
  }
}

function isSameButTheWay(a: JobFile, b: JobFile): boolean {
  if (a.parts !== b.parts) return false;
  if (a.fit === b.fit) return true;
  const keys = new Set([...Object.keys(a.fit), ...Object.keys(b.fit)]) as Set<keyof JobFile['fit']>;
  return [...keys].every((key) => key === 'offerUp' || a.fit[key] === b.fit[key]);
}
