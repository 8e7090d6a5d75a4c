import * as fs from 'node:fs';
import type { Disk } from '../../cli/save.ts';

const real: Disk = fs;

/** The real disk, but for one call that fails as a full or failing disk would, the `nth` time it is made. */
export function failingDisk(at: keyof Disk, code: string, nth = 1): Disk {
  const call = real[at] as (...args: unknown[]) => unknown;
  let made = 0;
  const failing = (...args: unknown[]): unknown => {
    made += 1;
    if (made === nth) throw Object.assign(new Error(`${code}: made to fail`), { code });
    return call(...args);
  };
  return { ...real, [at]: failing };
}
