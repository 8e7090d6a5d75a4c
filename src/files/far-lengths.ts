import type { Finding } from './finding.ts';
import { isPlainPath } from './plain-path.ts';
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
    if (typeof value === 'number' && Number.isFinite(value) && !isNear(value, mm)) {
      findings.push({ file, at: pathText(path), found: String(value), expected: withinReach(mm) });
    }
    if (typeof value !== 'object' || value === null || isNearPath(value, mm)) return;
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

/** Outlines are most of a file, and hardly ever far. */
const isNearPath = (value: unknown, mm: number): boolean =>
  isPlainPath(value) && value.every((vertex) => isNear(vertex[0], mm) && isNear(vertex[1], mm));

const isNear = (length: number, mm: number): boolean => Math.abs(length) * mm <= farthestMm;

export const withinReach = (mm: number): string =>
  mm === 1 ? `within ±${farthestMm} mm` : `within ±${farthestMm} mm, which is ±${Math.floor(farthestMm / mm)} here`;

const notLengths: ReadonlySet<PropertyKey> = new Set(['turn', 'tilt', 'density', 'share']);

/** What a list or an object holds; of a vertex [x, y, bulge] only the first two are lengths. */
function entriesOf(value: object): Iterable<[PropertyKey, unknown]> {
  if (!Array.isArray(value)) return Object.entries(value);
  const isVertex = value.length === 3 && value.every((item) => typeof item === 'number');
  return (isVertex ? value.slice(0, 2) : value).entries();
}
