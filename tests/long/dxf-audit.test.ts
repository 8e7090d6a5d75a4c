import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { bothCut } from '../support/both-cut.ts';
import { caseCutInstead, lugJob, plannedDemo, plannedJob } from '../support/markout-jobs.ts';
import { markoutFor, type PlannedJoint } from '../support/plan-answer.ts';
import { folderWith } from '../support/temp-folder.ts';

/** A Python that has ezdxf, MIT licence; null where none has. */
const python = ['python3', '/usr/bin/python3'].find(
  (name) => spawnSync(name, ['-c', 'import ezdxf'], { stdio: 'ignore' }).status === 0,
);

interface Audit {
  readonly version: string;
  readonly entities: number;
  readonly faults: readonly string[];
}

function audited(files: readonly string[]): Audit[] {
  const script = resolve(import.meta.dirname, '../support/audit-dxf.py');
  const { stdout, stderr, status } = spawnSync(python ?? '', [script, ...files], { encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout) as Audit[];
}

const title = python === undefined ? 'skipped: ezdxf is not installed' : 'DXF as ezdxf audits it';

describe.skipIf(python === undefined)(title, () => {
  it.each<[string, () => PlannedJoint]>([
    ['the carrier', () => plannedDemo('transfer-case')],
    ['the starter', () => plannedDemo('starter')],
    ['the case cut instead', caseCutInstead],
    ['a lug at the face', () => plannedJob(lugJob)],
    ['both parts cut', bothCut],
  ])('has nothing wrong in it, read as it is or recovered: %s', (_, made) => {
    const { joint, plan } = made();
    const folder = folderWith();
    const files = markoutFor({ joint, plan }).sheets.flatMap(({ name, dxf }) => {
      if (dxf === null) return [];
      const file = join(folder, `${name}.dxf`);
      writeFileSync(file, dxf);
      return [file];
    });
    const audits = audited(files);
    expect(audits).toHaveLength(files.length);
    for (const { version, entities, faults } of audits) {
      expect(version).toBe('AC1009');
      expect(entities).toBeGreaterThan(3);
      expect(faults).toEqual([]);
    }
  });

  it('would say so: an entity on a layer with a name that is not allowed', () => {
    const { joint, plan } = bothCut();
    const dxf = markoutFor({ joint, plan }).sheets.flatMap((sheet) => sheet.dxf ?? [])[0] ?? '';
    const file = join(folderWith(), 'bad.dxf');
    writeFileSync(file, dxf.replaceAll('CHECK-BAR', 'CHECK*BAR'));
    expect(audited([file])[0]?.faults).not.toEqual([]);
  });
});
