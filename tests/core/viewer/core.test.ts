import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { trueBars } from '../../../src/drawing/scene/check-bars.ts';
import type { JobFile } from '../../../src/files/job-file.ts';
import { Core, type QuestionEnd } from '../../../viewer/core.ts';
import type { Making, Question, Reply } from '../../../viewer/heavy/questions.ts';
import { type Call, patched, type WorkerMessage } from '../../../viewer/protocol.ts';
import { fitFile } from '../../support/small-job.ts';

const jobCalled = (title: string): JobFile => ({
  format: 'fettle-job/1',
  fit: { ...(fitFile as JobFile['fit']), title },
  parts: {},
});
const [first, second] = [jobCalled('first'), jobCalled('second')];

const work: Question = { kind: 'work', alternatives: false, from: null };
const at: Question = { kind: 'at', leg: 1, at: 0 };
const made = (as: Making['as']): Question => ({
  kind: 'make',
  what: { as, paper: 'a4', bars: trueBars, mirrored: false, date: '', page: '' },
  from: null,
  beside: {},
});
const imported: Question = { kind: 'import', file: { name: 'a.csv', bytes: new Uint8Array(), partName: 'Block' } };
const progress: Reply = { kind: 'progress', progress: { step: 'way in', done: 1, of: 2 } };

/** A worker that answers when it is told to, and keeps the job it is sent as a real one does. */
class Slow extends EventTarget {
  readonly calls: Call[] = [];
  isOver = false;
  #job: JobFile | null = null;
  postMessage(call: Call): void {
    this.calls.push(structuredClone(call));
    if ('patch' in call) this.#job = patched(this.#job, structuredClone(call.patch));
  }
  terminate(): void {
    this.isOver = true;
  }
  title = (): string | undefined => this.#job?.fit.title;
  /** What it was asked last and is at, or is told to drop, by kind. */
  last(): string {
    const call = this.calls.at(-1);
    if (call === undefined) return '';
    return 'drop' in call ? `drop ${call.drop}` : `${call.id} ${call.question.kind}`;
  }
  say(answered: WorkerMessage): void {
    this.dispatchEvent(new MessageEvent('message', { data: answered }));
  }
  break(): void {
    this.dispatchEvent(Object.assign(new Event('error'), { message: 'out of memory' }));
  }
}

function slowCore(hurries: boolean) {
  const workers: Slow[] = [];
  const start = (): Worker => {
    const worker = new Slow();
    workers.push(worker);
    return worker as unknown as Worker;
  };
  const core = new Core({ start, hurries });
  const told: string[] = [];
  const tell = (name: string, ended: QuestionEnd): void => {
    told.push(`${name} ${ended.how}`);
  };
  const ask = (name: string, question: Question, job: JobFile | null): Promise<void> =>
    core.ask(question, job, ({ kind }) => told.push(`${name}: ${kind}`)).then((ended) => tell(name, ended));
  return { core, workers, told, ask, worker: () => workers.at(-1) as Slow };
}

/** Time goes only where the test says so. */
function heldTime(): void {
  vi.useFakeTimers();
  onTestFinished(() => void vi.useRealTimers());
}
const passed = (ms: number): Promise<unknown> => vi.advanceTimersByTimeAsync(ms);
const turn = (): Promise<void> => new Promise((done) => setTimeout(done));

describe('one worker', () => {
  it('is started by the first question and by no other', async () => {
    const { workers, ask, worker } = slowCore(true);
    expect(workers).toHaveLength(0);
    ask('work', work, first);
    worker().say({ id: 1, end: '' });
    ask('pdf', made('pdf'), first);
    worker().say({ id: 2, end: '' });
    ask('work', work, second);
    expect(workers).toHaveLength(1);
    expect(worker().title()).toBe('second');
  });

  it('drops the work for newer work, and begins that once the old has let go', async () => {
    const { told, ask, worker } = slowCore(true);
    ask('old', work, first);
    ask('new', work, second);
    expect(worker().last()).toBe('drop 1');
    worker().say({ id: 1, reply: progress });
    worker().say({ id: 1, end: '' });
    expect([worker().last(), worker().title()]).toEqual(['2 work', 'second']);
    worker().say({ id: 2, reply: progress });
    worker().say({ id: 2, end: '' });
    await turn();
    expect(told).toEqual(['new: progress', 'old dropped', 'new answered']);
  });

  it('loses no output because an edit asks for work again: it is made first, of the job it was asked of', async () => {
    const { told, ask, worker } = slowCore(true);
    ask('old', work, first);
    ask('pdf', made('pdf'), first);
    ask('dxf', made('dxf'), first);
    ask('new', work, second);
    worker().say({ id: 1, end: '' });
    expect([worker().last(), worker().title()]).toEqual(['2 make', 'first']);
    worker().say({ id: 2, end: '' });
    expect([worker().last(), worker().title()]).toEqual(['3 make', 'first']);
    worker().say({ id: 3, end: '' });
    expect([worker().last(), worker().title()]).toEqual(['4 work', 'second']);
    worker().say({ id: 4, end: '' });
    await turn();
    expect(told).toEqual(['old dropped', 'pdf answered', 'dxf answered', 'new answered']);
  });

  it('makes a file that was asked for twice once', async () => {
    const { told, ask, worker } = slowCore(true);
    ask('work', work, first);
    ask('pdf', made('pdf'), first);
    ask('pdf again', made('pdf'), first);
    await turn();
    expect(told).toEqual(['pdf dropped']);
    worker().say({ id: 1, end: '' });
    worker().say({ id: 2, end: '' });
    await turn();
    expect(told).toEqual(['pdf dropped', 'work answered', 'pdf again answered']);
  });

  it('takes a file that is brought in at once, whatever it is at', () => {
    const { ask, worker } = slowCore(true);
    ask('work', work, first);
    ask('csv', imported, null);
    expect(worker().last()).toBe('2 import');
  });

  it('answers a hand that moves on as it goes: what is nearly there is told, and the newest waits', async () => {
    const { told, ask, worker } = slowCore(false);
    for (const name of ['one', 'two', 'three']) ask(name, at, first);
    const stands = { kind: 'stands', leg: 1, at: 0, standing: {} } as Reply;
    worker().say({ id: 1, reply: stands });
    worker().say({ id: 1, end: '' });
    worker().say({ id: 2, reply: stands });
    worker().say({ id: 2, end: '' });
    await turn();
    expect(told).toEqual(['one: stands', 'three: stands', 'two dropped', 'one answered', 'three answered']);
    expect(worker().calls).toHaveLength(2);
  });

  it('drops what nobody waits for any more', async () => {
    const { core, told, ask, worker } = slowCore(true);
    ask('work', work, first);
    ask('sheets', { kind: 'sheets', printing: { bars: trueBars, mirrored: false } }, first);
    core.drop('sheets');
    core.drop('work');
    expect(worker().last()).toBe('drop 1');
    worker().say({ id: 1, end: '' });
    await turn();
    expect(told).toEqual(['sheets dropped', 'work dropped']);
    expect(worker().calls).toHaveLength(2);
  });

  it('is started anew where it broke, and sent all of the job; what waited is still answered', async () => {
    const { workers, told, ask, worker } = slowCore(true);
    ask('work', work, first);
    ask('pdf', made('pdf'), first);
    worker().break();
    expect(workers.map(({ isOver }) => isOver)).toEqual([true, false]);
    expect([worker().last(), worker().title()]).toEqual(['2 make', 'first']);
    worker().say({ id: 2, end: '' });
    await turn();
    expect(told).toEqual(['work failed', 'pdf answered']);
  });

  it('tells what went wrong with a question, and goes on', async () => {
    const { core, worker } = slowCore(true);
    const ended = core.ask(work, first, () => {});
    worker().say({ id: 1, end: 'no such thing' });
    expect(await ended).toEqual({ how: 'failed', why: 'no such thing' });
  });
});

describe('a worker that does not let go', () => {
  it('is ended after 300 ms; a new one is sent all of the job, and what was kept waiting', async () => {
    heldTime();
    const { workers, told, ask, worker } = slowCore(true);
    ask('old', work, first);
    ask('pdf', made('pdf'), first);
    ask('new', work, second);
    await passed(299);
    expect(workers).toHaveLength(1);
    await passed(1);
    expect(workers.map(({ isOver }) => isOver)).toEqual([true, false]);
    expect([worker().last(), worker().title()]).toEqual(['2 make', 'first']);
    worker().say({ id: 2, end: '' });
    expect([worker().last(), worker().title()]).toEqual(['3 work', 'second']);
    worker().say({ id: 3, end: '' });
    await passed(1000);
    expect(told).toEqual(['old dropped', 'pdf answered', 'new answered']);
    expect(workers).toHaveLength(2);
  });

  it('is left alone where it lets go in time', async () => {
    heldTime();
    const { core, workers, ask, worker } = slowCore(true);
    ask('work', work, first);
    core.drop('work');
    await passed(200);
    worker().say({ id: 1, end: '' });
    await passed(1000);
    expect(workers.map(({ isOver }) => isOver)).toEqual([false]);
  });

  it('that was stopped is started anew by the next question', async () => {
    heldTime();
    const { core, workers, ask, worker } = slowCore(true);
    ask('work', work, first);
    core.drop('work');
    await passed(300);
    expect(workers.map(({ isOver }) => isOver)).toEqual([true]);
    ask('again', work, first);
    expect([workers.length, worker().last(), worker().title()]).toEqual([2, '2 work', 'first']);
  });

  it('loses no file that was brought in meanwhile: it is read anew, and once that is so, to its end', async () => {
    heldTime();
    const { core, workers, told, ask, worker } = slowCore(true);
    ask('old', work, first);
    ask('csv', imported, null);
    ask('new', work, second);
    await passed(300);
    expect(worker().calls.map((call) => 'question' in call && call.question.kind)).toEqual(['import', 'work']);
    core.drop('work');
    await passed(3000);
    expect(workers).toHaveLength(2);
    worker().say({ id: 3, end: '' });
    await passed(300);
    expect(workers.map(({ isOver }) => isOver)).toEqual([true, true]);
    expect(told).toEqual(['old dropped', 'new dropped', 'csv answered']);
  });

  it('is not heard any more, nor is its end taken for that of the new one', async () => {
    heldTime();
    const { workers, told, ask, worker } = slowCore(true);
    ask('old', work, first);
    ask('new', work, second);
    await passed(300);
    workers[0]?.say({ id: 1, end: '' });
    workers[0]?.break();
    worker().say({ id: 2, end: '' });
    await passed(0);
    expect(told).toEqual(['old dropped', 'new answered']);
    expect(workers.map(({ isOver }) => isOver)).toEqual([true, false]);
  });
});
