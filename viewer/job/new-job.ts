import type { JobFile, PartDraft } from '../../src/files/job-file.ts';

const emptyPart = (name: string): PartDraft => ({ format: 'fettle-part/1', name, units: 'mm', sections: [] });

/** A job with nothing in it yet, and clearances of common practice (no source). */
export const newJob = (names: { readonly fixed: string; readonly moving: string }): JobFile => ({
  format: 'fettle-job/1',
  fit: {
    format: 'fettle-fit/1',
    units: 'mm',
    fixed: 'fixed.part.json',
    moving: 'moving.part.json',
    axis: [0, 0],
    clearance: { home: 2, wayIn: 1 },
  },
  parts: { 'fixed.part.json': emptyPart(names.fixed), 'moving.part.json': emptyPart(names.moving) },
});
