import type { Finding } from './finding.ts';

const longestCompared = 64;
const mostCompared = 2000;

/**
 * The candidate nearest to a mistyped word by edit distance, letter case set aside; undefined where none is near:
 * more than half of the longer word, and more than one letter, would have to change.
 */
export function nearestOf(word: string, candidates: readonly string[]): string | undefined {
  let best: string | undefined;
  let fewest = Number.POSITIVE_INFINITY;
  if (word.length > longestCompared) return undefined;
  for (const candidate of candidates.slice(0, mostCompared)) {
    if (candidate.length > longestCompared) continue;
    const edits = editDistance(word.toLowerCase(), candidate.toLowerCase());
    const allowed = Math.max(1, Math.max(word.length, candidate.length) / 2);
    if (edits <= allowed && edits < fewest) [best, fewest] = [candidate, edits];
  }
  return best;
}

/**
 * Fewest letters put in, left out, changed, or swapped with their neighbour that make `a` into `b`
 * (optimal string alignment).
 */
export function editDistance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  const at = (i: number, j: number): number => rows[i]?.[j] ?? Number.POSITIVE_INFINITY;
  for (let i = 1; i <= a.length; i++) {
    rows.push([i]);
    for (let j = 1; j <= b.length; j++) {
      const changed = at(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped = a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? at(i - 2, j - 2) + 1 : changed;
      rows[i]?.push(Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, changed, swapped));
    }
  }
  return at(a.length, b.length);
}

/** A finding about a word, with the nearest candidate where there is one. */
export function suggesting(finding: Finding, word: string, candidates: readonly string[]): Finding {
  const didYouMean = nearestOf(word, candidates);
  return didYouMean === undefined ? finding : { ...finding, didYouMean };
}
