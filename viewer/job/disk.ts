import { type JobFile, jobFile } from '../../src/model/job-file.ts';
import { readJobFile } from '../../src/model/read-job-file.ts';
import { findingsText } from '../../src/words/finding-text.ts';

export type Opened = { readonly ok: true; readonly value: JobFile } | { readonly ok: false; readonly text: string };

/** A job from the files someone opened: one job file, or a fit with its parts. */
export async function jobFromFiles(files: readonly File[]): Promise<Opened> {
  const texts = await Promise.all(files.map(async (file) => [file.name, await file.text()] as const));
  const whole = texts.find(([name]) => name.endsWith('.job.json'));
  const fit = texts.find(([name]) => name.endsWith('.fit.json'));
  if (whole !== undefined) return told(readJobFile(...whole));
  const parts = texts.filter(([name]) => name.endsWith('.part.json'));
  const parsed = Object.fromEntries(parts.map(([name, text]) => [name, JSON.parse(text)]));
  return {
    ok: true,
    value: jobFile.parse({ format: 'fettle-job/1', fit: JSON.parse(fit?.[1] ?? '{}'), parts: parsed }),
  };
}

const told = (read: ReturnType<typeof readJobFile>): Opened =>
  read.ok ? read : { ok: false, text: findingsText(read.findings) };
