import type { Finding, Reading } from '../../files/finding.ts';
import { shown } from '../../files/shown.ts';
import { vec } from '../../geometry/plane/vec.ts';
import { decodedText } from '../decode-text.ts';
import type { Drawing, NamedHole, NamedWallReading } from '../drawing.ts';
import { lengthUnits, unitNamed } from '../length-unit.ts';
import { Cells } from './csv-cells.ts';
import { depthIn, doNotCutDepth, hollowFacts, sectionFacts, yesOrNo } from './csv-facts.ts';
import { rowsByOwner } from './csv-owners.ts';
import { readTable } from './csv-rows.ts';
import { shapesOf } from './csv-shapes.ts';

const columns = [
  'section',
  'loop',
  'kind',
  'x',
  'y',
  'bulge',
  'diameter',
  'x2',
  'y2',
  'width',
  'tip width',
  'hole',
  'hollow',
  'do not cut',
  'wall',
  'thread',
  'proud',
  'keep wall',
  'may break',
  'depth from',
  'depth to',
  'error',
  'got by',
  'may cut',
  'note',
] as const;

/** What a row of a hole may be. */
const holeKinds = ['dowel', 'bolt', 'tapped', 'stud', 'bore', 'planned'] as const;

/**
 * Reads measured points and features, as a builder keeps them in a spreadsheet: a header row that names the columns,
 * in any order and only those wanted, then one row a point, a feature or a hole.
 *
 *     section; kind;   x;    y;    diameter; x2;  y2; width; tip width; depth from; depth to; hole; thread
 *     wall;    ;       150;  -150; ;         ;    ;   ;      ;          12;         90
 *     ;        ;       150;  48
 *     ;        arc;    139;  67
 *     ;        ;       126;  84
 *     ;        ;       90;   -150
 *     rib 1;   rib;    126;  66;   ;         162; 66; 8;     6;         12;         90
 *     boss;    circle; 135,5; 105,9; 35;     ;    ;   ;      ;          12;         90
 *     ;        dowel;  -158; 12;   14;       ;    ;   ;      ;          ;           ;         D1
 *     ;        tapped; -72;  142;  ;         ;    ;   ;      ;          ;           ;         B1;   M12x1.75
 *
 * - A row with a `hole` is a hole of that name; its `kind` is dowel, bolt, tapped, stud, bore or planned. `diameter`,
 *   `thread`, `proud` (of a dowel), `depth from` and `depth to`, `keep wall` (to a cut) and `may break` (yes or no: a
 *   cut may break into it) may stay blank.
 * - Any other row belongs to its `section`, or to that of the row above where the cell is blank. By `kind` it is
 *   `point` (or blank): the next point of an outline, which closes of itself; `bulge` makes the edge to the next point an arc;
 *   `arc`: a point on the arc from the point before to the point after;
 *   `circle`: a round boss or bore, centre and `diameter`;
 *   `rib`: straight from the middle of its root (x, y) to the middle of its tip (x2, y2), `width` thick, at the tip `tip width`.
 * - Points of another outline in the same section have another number or name in `loop`.
 * - A row with a `hollow` belongs to the jacket, gallery or bore of that name, and so do the rows below it that name
 *   nothing: outlined as sections are, with `depth from`, `depth to`, `keep wall` and `error` said once.
 * - A row with a `do not cut` belongs to the region of that name that must stay, likewise; it has only its depth.
 * - A row with a `wall` is a reading of how thick the metal is: at x, y and `depth from`, ± `error`.
 * - `depth from`, `depth to` (from the mating face; negative: proud of it), `error` (± of the outline), `got by`,
 *   `may cut` (yes or no) and `note` are said once for a section.
 * - Cells are parted by tabs, semicolons or commas; with tabs or semicolons numbers may have a decimal comma.
 *   A unit in brackets behind a column's name (`x [mm]`) is the unit of every length.
 */
export function readCsv(file: string, bytes: Uint8Array): Reading<Drawing> {
  const table = readTable(file, decodedText(bytes), columns);
  if (!table.ok) return table;
  const findings: Finding[] = [];
  const rows = table.value.rows.map((row) => new Cells(file, row, table.value.decimalComma, findings));
  const holes = rows.filter(isHole).map(holeOf);
  const wallReadings = rows.filter(isReading).map(readingOf);
  const owned = rowsByOwner(rows.filter((cells) => !isHole(cells) && !isReading(cells)));
  const shapes = [...owned.section].flatMap(([layer, own]) => shapesOf(layer, own));
  const facts = new Map([...owned.section].map(([layer, own]) => [layer, sectionFacts(own)]));
  const hollows = [...owned.hollow].map(([id, own]) => ({ id, shapes: shapesOf(id, own), ...hollowFacts(own) }));
  const doNotCut = [...owned['do not cut']].map(([id, own]) => ({
    id,
    shapes: shapesOf(id, own),
    depth: doNotCutDepth(own),
  }));
  const unit = table.value.unit === null ? null : unitNamed(table.value.unit.toLowerCase());
  if (table.value.unit !== null && unit === null) {
    const expected = lengthUnits.map(({ name }) => name).join(', ');
    findings.push({ file, at: 'line 1', found: `the unit ${shown(table.value.unit)}`, expected });
  }
  findings.sort((one, other) => lineIn(one) - lineIn(other));
  return findings.length > 0
    ? { ok: false, findings }
    : { ok: true, value: { unit, inPixels: false, shapes, holes, hollows, doNotCut, wallReadings, facts, notes: [] } };
}

const lineIn = ({ at }: Finding): number => Number(/\d+/.exec(at)?.[0] ?? 0);

const isHole = (cells: Cells): boolean => cells.text('hole') !== null;

/** A reading of a wall stands by itself: it outlines nothing. */
const isReading = (cells: Cells): boolean => !isHole(cells) && cells.text('wall') !== null;

function readingOf(cells: Cells): NamedWallReading {
  for (const column of ['section', 'hollow', 'do not cut', 'kind', 'diameter', 'x2', 'y2', 'width', 'depth to']) {
    const said = cells.text(column);
    if (said !== null)
      cells.refuse(column, shown(said), 'a blank cell: a reading of a wall has only x, y, depth from, wall and error');
  }
  return {
    at: vec(cells.needed('x'), cells.needed('y')),
    depth: cells.needed('depth from'),
    wall: cells.size('wall') ?? Number.NaN,
    error: cells.number('error'),
  };
}

function holeOf(cells: Cells): NamedHole {
  if (cells.text('wall') !== null) cells.refuse('wall', 'a hole and a reading of a wall in one', 'one or the other');
  if (cells.text('hollow') !== null) cells.refuse('hollow', 'a hole and a hollow in one', 'one or the other');
  return {
    id: cells.text('hole') ?? '',
    kind: cells.word('kind', holeKinds),
    place: `line ${cells.line}`,
    at: vec(cells.needed('x'), cells.needed('y')),
    diameter: cells.size('diameter'),
    proud: cells.number('proud'),
    thread: cells.text('thread'),
    depth: depthIn([cells]),
    keepWall: cells.number('keep wall'),
    mayBreak: yesOrNo(cells, 'may break'),
  };
}
