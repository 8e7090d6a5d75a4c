import type { Finding, Reading } from '../files/finding.ts';
import type { Drawing } from './drawing.ts';
import { type LengthUnit, lengthUnits, pixelAt, unitNamed } from './length-unit.ts';
import { verticesAlong } from './outlines/stroke.ts';

interface UnitOptions {
  readonly units: string | null;
  readonly dpi: number | null;
}

const names = lengthUnits.map(({ name }) => name).join(', ');

/**
 * The unit a drawing's lengths are in: the file's own word, else what is asked for. Never guessed, and never against
 * the file: an answer that disagrees with it is a finding.
 */
export function drawingUnit(file: string, drawing: Drawing, { units, dpi }: UnitOptions): Reading<LengthUnit> {
  const own = drawing.unit;
  if (units !== null && dpi !== null) return refused(file, 'both --units and --dpi', 'one of them');
  if (dpi !== null && !drawing.inPixels) return refused(file, '--dpi for a drawing that is not in pixels', 'no --dpi');
  if (dpi !== null) return { ok: true, value: pixelAt(dpi) };
  const asked = units === null ? own : unitNamed(units);
  if (asked === null) return refused(file, ...(units === null ? unasked(drawing) : ([units, names] as const)));
  if (own !== null && own.name !== asked.name) {
    return refused(
      file,
      `${asked.name} asked for, but the file says ${own.name}`,
      `no --units, or --units ${own.name}`,
    );
  }
  return { ok: true, value: asked };
}

function unasked(drawing: Drawing): readonly [found: string, expected: string] {
  const found = `no unit; what is drawn measures ${extentOf(drawing)}`;
  return [found, drawing.inPixels ? '--dpi 96 or --dpi 90, or --units mm' : '--units mm or --units in'];
}

const refused = (file: string, found: string, expected: string): Reading<never> => ({
  ok: false,
  findings: [{ file, at: 'units', found, expected } satisfies Finding],
});

/** Width × height of everything drawn, so that a builder sees which unit makes sense of it. */
export function extentOf({ shapes }: Drawing): string {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { shape } of shapes) {
    const around = shape.kind === 'circle' ? shape.radius : 0;
    for (const { x, y } of shape.kind === 'circle' ? [shape.centre] : verticesAlong(shape.strokes, 1)) {
      [left, right] = [Math.min(left, x - around), Math.max(right, x + around)];
      [low, high] = [Math.min(low, y - around), Math.max(high, y + around)];
    }
  }
  return left > right ? '0 × 0' : `${rounded(right - left)} × ${rounded(high - low)}`;
}

const rounded = (length: number): string => String(Number(length.toPrecision(4)));
