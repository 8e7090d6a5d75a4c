import { distanceFaults, intervalFaults, passageOf } from '../support/judge-passage.ts';
import { Random } from '../support/random.ts';
import { randomSetting, type Setting } from '../support/random-settings.ts';
import { nastySetting } from './nasty-settings.ts';

/** A setting that was answered wrongly, or not at all, and what was wrong. */
export interface Failure {
  readonly seed: number;
  readonly faults: readonly string[];
  readonly setting: Setting;
}

/** Tries random settings, nasty and plain by turns, for so many seconds; every failure is returned ready to be kept. */
export function fuzzMotion(firstSeed: number, seconds: number): { tried: number; found: Failure[] } {
  const found: Failure[] = [];
  const end = performance.now() + 1000 * seconds;
  let seed = firstSeed;
  for (; performance.now() < end; seed++) {
    const setting = seed % 2 === 0 ? nastySetting(new Random(seed)) : randomSetting(new Random(seed));
    const faults = faultsOf(setting);
    if (faults.length > 0) found.push({ seed, faults, setting });
  }
  return { tried: seed - firstSeed, found };
}

/** All that is wrong with the answer to a setting; a thrown error counts. */
export function faultsOf(setting: Setting): string[] {
  try {
    const answer = passageOf(setting);
    return [
      ...distanceFaults(setting, answer, 1e-2),
      ...(answer.state === 'clear' ? [] : intervalFaults(setting, answer, 10)),
    ];
  } catch (error) {
    return [`threw ${error}`];
  }
}
