import { describe, expect, it } from 'vitest';
import { drain, type Progress } from '../../../src/geometry/progress.ts';
import { once } from '../../../src/pipeline/stage.ts';

const steps = (log: string[], of = 3) =>
  function* (): Generator<Progress, string> {
    for (let done = 0; done < of; done++) {
      log.push(`step ${done}`);
      yield { step: 'counting', done, of };
    }
    return 'counted';
  };

describe('a stage', () => {
  it('is worked out once however often it is asked', () => {
    const log: string[] = [];
    const stage = once(steps(log));
    expect([drain(stage()), drain(stage()), drain(stage())]).toEqual(['counted', 'counted', 'counted']);
    expect(log).toEqual(['step 0', 'step 1', 'step 2']);
  });

  it('does nothing before it is asked', () => {
    const log: string[] = [];
    once(steps(log))();
    expect(log).toEqual([]);
  });

  it('goes on where it was dropped', () => {
    const log: string[] = [];
    const stage = once(steps(log));
    const dropped = stage();
    dropped.next();
    dropped.next();
    dropped.return('never');
    expect(drain(stage())).toBe('counted');
    expect(log).toEqual(['step 0', 'step 1', 'step 2']);
  });

  it('is shared by two who ask at the same time', () => {
    const log: string[] = [];
    const stage = once(steps(log));
    const [one, other] = [stage(), stage()];
    one.next();
    other.next();
    expect([drain(one), drain(other)]).toEqual(['counted', 'counted']);
    expect(log).toEqual(['step 0', 'step 1', 'step 2']);
  });

  it('that breaks is begun anew by whoever asks next, and tells each what broke it', () => {
    let tries = 0;
    const stage = once<string>(function* () {
      yield { step: 'trying', done: 0, of: 1 };
      tries += 1;
      if (tries === 1) throw new Error('broken');
      return 'mended';
    });
    expect(() => drain(stage())).toThrow('broken');
    expect(drain(stage())).toBe('mended');
  });
});
