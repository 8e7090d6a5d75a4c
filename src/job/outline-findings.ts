import { farthestMm, withinReach } from '../files/far-lengths.ts';
import type { Finding } from '../files/finding.ts';
import { type LoopFile, loop as loopSchema } from '../files/part-file.ts';
import { isPlainPath } from '../files/plain-path.ts';
import { pathText, schemaFindings } from '../files/schema-findings.ts';
import type { Loop } from '../geometry/plane/loop.ts';
import { type LoopFault, loopFaults } from '../geometry/plane/loop-faults.ts';
import { boxOfRegion } from '../geometry/plane/region-box.ts';
import { loopOf } from './lengths.ts';

interface DrawnLoop {
  readonly at: string;
  readonly loop: Loop;
}

/** More than anyone will read of one solid. */
const enough = 100;

/** What is wrong with the outlines of one solid, given as they stand in the file at `path`. */
export function outlineFindings(
  file: string,
  path: readonly PropertyKey[],
  raw: readonly unknown[],
  mm: number,
): Finding[] {
  const findings: Finding[] = [];
  const drawn: DrawnLoop[] = [];
  for (const [i, value] of raw.entries()) {
    const faults = isPlainPath(value) ? [] : schemaFindings(file, loopSchema, value, [...path, i]);
    const at = pathText([...path, i]);
    const loop = faults.length > 0 ? null : loopOf(value as LoopFile, mm);
    if (loop === null) findings.push(...faults);
    else if (isInReach(loop)) drawn.push({ at, loop });
    else if (hasNearPoints(loop))
      findings.push({ file, at, found: 'an arc that reaches farther', expected: withinReach(mm) });
    if (findings.length > enough) return findings;
  }
  const faults = loopFaults(drawn.map(({ loop }) => loop));
  return [...findings, ...faults.map((fault) => faultFinding(file, drawn, fault, mm))];
}

function isInReach(loop: Loop): boolean {
  const box = boxOfRegion([loop]);
  return Math.max(-box.minX, -box.minY, box.maxX, box.maxY) <= farthestMm;
}

/** A length that is far itself is told of with the other lengths of the file. */
const hasNearPoints = (loop: Loop): boolean =>
  loop.kind === 'path'
    ? loop.vertices.every(({ x, y }) => isNear(x) && isNear(y))
    : isNear(loop.centre.x) && isNear(loop.centre.y) && isNear(loop.radius);

const isNear = (mm: number): boolean => Math.abs(mm) <= farthestMm;

function faultFinding(file: string, drawn: readonly DrawnLoop[], fault: LoopFault, mm: number): Finding {
  const { at = '' } = drawn[fault.loop] ?? {};
  const other = fault.otherLoop === fault.loop ? 'itself' : (drawn[fault.otherLoop]?.at ?? '');
  const place = fault.vertex === null ? at : `${at}[${fault.vertex}]`;
  return { file, at: place, ...faultWords(fault, other, mm) };
}

function faultWords({ kind, at }: LoopFault, other: string, mm: number): Pick<Finding, 'found' | 'expected'> {
  const where = `(${figure(at.x / mm)}, ${figure(at.y / mm)})`;
  const apart = 'outlines that meet neither themselves nor one another';
  switch (kind) {
    case 'closed-twice':
      return { found: `the first vertex again, ${where}`, expected: 'no closing vertex: a loop closes of itself' };
    case 'zero-length-edge':
      return { found: `the vertex before it again, ${where}`, expected: 'an edge with a length' };
    case 'repeated-vertex':
      return { found: `an outline that comes to ${where} more than once`, expected: 'each vertex once' };
    case 'too-few-vertices':
      return { found: `too few vertices at ${where}`, expected: 'three vertices or more, or two with an arc' };
    case 'no-area':
      return { found: `an outline near ${where} that encloses no area`, expected: 'an outline round metal' };
    case 'crosses':
      return { found: `an outline that crosses ${other} at ${where}`, expected: apart };
    case 'touches':
      return { found: `an outline that touches ${other} at ${where}`, expected: apart };
    case 'overlaps':
      return { found: `an outline that runs along ${other} at ${where}`, expected: apart };
    case 'too-tangled':
      return { found: `outlines too tangled to check, near ${where}`, expected: 'fewer edges over the same place' };
  }
}

/** A coordinate to the sixth place, without trailing noughts. */
const figure = (x: number): string => String(Math.round(x * 1e6) / 1e6 + 0);
