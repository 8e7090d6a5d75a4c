import block from '../../profiles/marsh-carrier/block.part.json';
import clutch from '../../profiles/marsh-carrier/clutch.part.json';
import ringGear from '../../profiles/marsh-carrier/ring-gear.part.json';
import fit from '../../profiles/marsh-carrier/transfer-case.fit.json';
import transferCase from '../../profiles/marsh-carrier/transfer-case.part.json';
import { type JobFile, jobFile } from '../../src/files/job-file.ts';

/** A worked job to look at. */
export const demoJob = (): JobFile =>
  jobFile.parse({
    format: 'fettle-job/1',
    fit,
    parts: {
      'block.part.json': block,
      'transfer-case.part.json': transferCase,
      'ring-gear.part.json': ringGear,
      'clutch.part.json': clutch,
    },
  });
