import { describe, expect, it } from 'vitest';
import { demoJob } from '../../../viewer/heavy/demo-job.ts';
import { jobFileName } from '../../../viewer/job/job-file-name.ts';

const named = (title: string, ending: string): string => {
  const job = demoJob();
  return jobFileName({ ...job, fit: { ...job.fit, title } }, ending);
};

describe('a file of a job', () => {
  it.each([
    ['Marsh carrier, four: No. 2', 'marsh-carrier-four-no-2.dxf.zip'],
    ['../../etc/passwd\\C:', 'etc-passwd-c.dxf.zip'],
    ['Gehäuse 漢', 'gehäuse-漢.dxf.zip'],
    [' – ', 'job.dxf.zip'],
    [`${'a'.repeat(59)} b`, `${'a'.repeat(59)}.dxf.zip`],
  ])('is named after its fit by letters and figures alone: %s', (title, name) => {
    expect(named(title, '.dxf.zip')).toBe(name);
  });

  it.each([
    ['a', 'a'],
    ['漢', '漢'],
    // two units a letter, and the cut falls between them
    ['of two units', 'x𠀀'.padEnd(20_000, '𠀀')],
  ])('has a name that any disk takes, of 20,000 letters too: %s', (_, letters) => {
    const name = named(letters.repeat(20_000).slice(0, 20_000), '-mirrored.dxf.zip');
    // 255 bytes are the most on common disks, a value from memory
    expect(new TextEncoder().encode(name).byteLength).toBeLessThanOrEqual(255);
    expect(name).toMatch(/^[^\p{Cs}]+-mirrored\.dxf\.zip$/u);
  });
});
