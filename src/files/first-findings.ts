import type { Finding } from './finding.ts';

const mostFindings = 50;

/** The findings of one file that are worth reading at once; where there are more, the last one says so. */
export function firstFindings(file: string, findings: readonly Finding[]): readonly Finding[] {
  if (findings.length <= mostFindings) return findings;
  const closing = { file, at: '', found: `more faults than these ${mostFindings}`, expected: 'none' };
  return [...findings.slice(0, mostFindings), closing];
}
