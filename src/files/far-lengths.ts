import type { Finding } from './finding.ts';
import { pathText } from './schema-findings.ts';

/** No drawing of a casting reaches farther from its origin than this. */
export const farthestMm = 1e5;

const mostReported = 20;

/** Every length of a file that lies beyond ±1e5 mm; bulges, turns and densities are no lengths. */
export function farLengths(file: string, raw: unknown, mm: number): Finding[] {
  const findings: Finding[] = [];
  const path: PropertyKey[] = [];
  const visit = (value: unknown): void => {
    if (findings.length >= mostReported) return;
    if (typeof value === 'number' && Number.isFinite(value) && Math.abs(value) * mm > farthestMm) {
      findings.push({ file, at: pathText(path), found: String(value), expected: withinReach(mm) });
    }
    if (typeof value !== 'object' || value === null) return;
    for (const [step, inner] of entriesOf(value)) {
      if (notLengths.has(step)) continue;
      path.push(step);
      visit(inner);
      path.pop();
    }
  };
  visit(raw);
  return findings;
}

export const withinReach = (mm: number): string =>
  mm === 1 ? `within ±${farthestMm} mm` : `within ±${farthestMm} mm, which is ±${Math.floor(farthestMm / mm)} here`;

const notLengths: ReadonlySet<PropertyKey> = new Set(['turn', 'density', 'share']);

/** What a list or an object holds; of a vertex [x, y, bulge] only the first two are lengths. */
function entriesOf(value: object): Iterable<[PropertyKey, unknown]> {
  if (!Array.isArray(value)) return Object.entries(value);
  const isVertex = value.length === 3 && value.every((item) => typeof item === 'number');
  return (isVertex ? value.slice(0, 2) : value).entries();
}
