import type { Reading } from '../src/files/finding.ts';

/** What is wrong with what was typed, by the flags it was typed behind; those named are arguments, and have none. */
export function ofFlags<T>(reading: Reading<T>, args: readonly string[] = []): Reading<T> {
  if (reading.ok) return reading;
  const named = (at: string): string =>
    args.includes(at) ? at : `--${at.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
  return { ok: false, findings: reading.findings.map((finding) => ({ ...finding, at: named(finding.at) })) };
}
