import { afterEach, describe, expect, it, vi } from 'vitest';
import { runShowingProgress } from '../../../cli/progress.ts';
import type { Progress } from '../../../src/geometry/progress.ts';

/** A job of `steps` steps that each take `stepMs` on the clock. */
function* job(steps: number, stepMs: number): Generator<Progress, string> {
  for (let done = 1; done <= steps; done += 1) {
    now += stepMs;
    yield { step: 'Sweeping the way in', done, of: steps };
  }
  return 'answer';
}

let now = 0;

function onTerminal(isTTY: boolean): string[] {
  const written: string[] = [];
  now = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => now);
  vi.spyOn(process.stderr, 'write').mockImplementation((chunk) => written.push(String(chunk)) > 0);
  const before = Object.getOwnPropertyDescriptor(process.stderr, 'isTTY');
  Object.defineProperty(process.stderr, 'isTTY', { value: isTTY, configurable: true });
  restore = () => {
    if (before) Object.defineProperty(process.stderr, 'isTTY', before);
    else Reflect.deleteProperty(process.stderr, 'isTTY');
  };
  return written;
}

let restore = (): void => {};

afterEach(() => {
  restore();
  vi.restoreAllMocks();
});

describe('progress on the terminal', () => {
  it('shows nothing of a job that is done within a second', () => {
    const written = onTerminal(true);
    expect(runShowingProgress(job(9, 100))).toBe('answer');
    expect(written).toEqual([]);
  });

  it('shows steps past a second, and wipes them at the end', () => {
    const written = onTerminal(true);
    runShowingProgress(job(20, 100));
    expect(written[0]).toContain('Sweeping the way in  10 of 20');
    expect(written.at(-1)).toBe('\r\x1b[K');
  });

  it('shows nothing where nobody watches', () => {
    const written = onTerminal(false);
    runShowingProgress(job(20, 100));
    expect(written).toEqual([]);
  });

  it('wipes the line when the job fails, and hands the fault on', () => {
    const written = onTerminal(true);
    const failing = function* (): Generator<Progress, never> {
      yield* job(20, 100);
      throw new Error('broken');
    };
    expect(() => runShowingProgress(failing())).toThrow('broken');
    expect(written.at(-1)).toBe('\r\x1b[K');
  });
});
