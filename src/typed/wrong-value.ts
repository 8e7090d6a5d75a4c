import type { Finding, Reading } from '../files/finding.ts';

/** What is wrong with a flag, or with a figure that was typed. */
export const wrongValue = (
  at: string,
  found: string,
  expected: string,
): { readonly ok: false; readonly findings: Finding[] } => ({
  ok: false,
  findings: [{ file: '', at, found, expected }],
});

/** Reads flags one by one, null where one was not given or is wrong; what is wrong with any goes into `findings`. */
export const gatheringIn =
  (findings: Finding[]) =>
  <T>(value: string | undefined, read: (value: string) => Reading<T>): T | null => {
    const reading = value === undefined ? null : read(value);
    if (reading?.ok === false) findings.push(...reading.findings);
    return reading?.ok ? reading.value : null;
  };
