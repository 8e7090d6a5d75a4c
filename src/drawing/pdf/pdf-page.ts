import { type Box, boxesMeet } from '../../geometry/plane/edge-box.ts';
import { add, lerp, scale, type Vec, vec } from '../../geometry/plane/vec.ts';
import { barMm } from '../scene/check-bars.ts';
import type { Tile } from '../scene/inked-tiles.ts';
import { marginMm, overlapMm, type Tiling } from '../scene/papers.ts';
import { number } from '../svg/svg-paint.ts';
import { fontNames, type Lettering } from './pdf-marks.ts';
import { pair } from './pdf-path.ts';
import { winAnsi } from './pdf-text.ts';

/** One sheet of a printed drawing. */
export interface Sheet extends Tile {
  readonly title: string;
  readonly tiling: Tiling;
  /** Its number in the whole document, and how many there are. */
  readonly sheet: number;
  readonly of: number;
}

const textMm = 2.5;
const smallMm = 2;
/** From the edge of the paper to the line of a check bar, and to the foot of a line of words, mm. */
const barInMm = 7;
const wordsInMm = 6.6;

/** Points to a millimetre: a point is 1/72 in. */
export const ptPerMm = 72 / 25.4;

/** Where on the page the drawing's own lower left corner lies, mm; the drawing is placed from its upper left. */
export function cornerOnPage({ tiling, column, row }: Sheet, drawingHeightMm: number): Vec {
  const { columnJoins, rowJoins, stretchX, stretchY, pageHeightMm } = tiling;
  const top = drawingHeightMm - beginsAt(rowJoins, row);
  return vec(marginMm - beginsAt(columnJoins, column) * stretchX, pageHeightMm - marginMm - top * stretchY);
}

/** Where a column or row begins, half of what it shares with the one before it ahead of their join, mm. */
const beginsAt = (joins: readonly number[], count: number): number =>
  count === 1 ? 0 : (joins[count - 2] as number) - overlapMm / 2;

/** The part of the page that shows the drawing, mm: up to what it shares with the sheets after it. */
export function shownOnPage({ tiling, column, row }: Sheet): Box {
  const { columnJoins, rowJoins, stretchX, stretchY, pageWidthMm, pageHeightMm } = tiling;
  const [joinX, joinY] = [columnJoins[column - 1], rowJoins[row - 1]];
  const shownMm = (join: number, begins: number): number => join + overlapMm / 2 - begins;
  const top = pageHeightMm - marginMm;
  return {
    minX: marginMm,
    maxX:
      joinX === undefined
        ? pageWidthMm - marginMm
        : marginMm + shownMm(joinX, beginsAt(columnJoins, column)) * stretchX,
    minY: joinY === undefined ? marginMm : top - shownMm(joinY, beginsAt(rowJoins, row)) * stretchY,
    maxY: top,
  };
}

/** All that a sheet carries besides the drawing, clear of the words of it, as PDF operators in mm of the page. */
export const furniture = (sheet: Sheet, fonts: Lettering, words: readonly Box[]): string =>
  [
    'q 0 G 0 g 0.25 w [] 0 d',
    ...checkBars(sheet, fonts),
    ...head(sheet, fonts),
    ...pageMap(sheet),
    ...seams(sheet, fonts, words),
    'Q',
  ].join('\n');

const segment = (a: Vec, b: Vec): string => `${pair(a)} m ${pair(b)} l S`;

/** A bar along the foot and one up the left side, each 150 mm as printed; x is the paper's short side. */
function checkBars({ tiling }: Sheet, fonts: Lettering): string[] {
  const { stretchX, stretchY, turned } = tiling;
  const [across, up] = turned === 'portrait' ? ['x', 'y'] : ['y', 'x'];
  const foot = vec(marginMm, barInMm);
  const side = vec(barInMm, marginMm);
  const end = vec(foot.x + barMm * stretchX, foot.y);
  const top = vec(side.x, side.y + barMm * stretchY);
  return [
    ...bar(foot, end, vec(0, 1)),
    ...bar(side, top, vec(1, 0)),
    text(`${across} 150 mm: measure this bar`, vec(end.x + 1.5, foot.y - 0.8), smallMm, fonts),
    upwards(`${up} 150 mm: measure this bar`, vec(side.x + 0.8, top.y + 1.5), smallMm, fonts),
  ];
}

/** The line, long ticks at its ends, and a short one every 10 mm. */
function bar(from: Vec, to: Vec, square: Vec): string[] {
  const ticks = Array.from({ length: 16 }, (_, i) => {
    const at = lerp(from, to, i / 15);
    const reach = i % 15 === 0 ? 1.5 : i % 5 === 0 ? 1 : 0.6;
    const back = i % 15 === 0 ? 1.5 : 0;
    return segment(
      vec(at.x - square.x * back, at.y - square.y * back),
      vec(at.x + square.x * reach, at.y + square.y * reach),
    );
  });
  return [segment(from, to), ...ticks];
}

/** Whether a drawing needs no joining. */
const isWhole = ({ columns, rows }: Tiling): boolean => columns * rows === 1;

function head({ title, tiling, column, row, sheet, of }: Sheet, fonts: Lettering): string[] {
  const y = tiling.pageHeightMm - marginMm + 3.4 - 1;
  const place = isWhole(tiling) ? '' : `column ${column} row ${row} of ${tiling.columns} by ${tiling.rows}, `;
  const count = `${place}sheet ${sheet} of ${of}`;
  const right = tiling.pageWidthMm - marginMm - (isWhole(tiling) ? 0 : mapWidth(tiling) + 2);
  const room = right - marginMm - widthOf(count, textMm, fonts) - 4;
  return [
    text(fitted(`${title}. Print at 100 %, no fit to page.`, textMm, room, fonts), vec(marginMm, y), textMm, fonts),
    text(count, vec(right - widthOf(count, textMm, fonts), y), textMm, fonts),
    text('Fettle', vec(tiling.pageWidthMm - marginMm - widthOf('Fettle', smallMm, fonts), wordsInMm), smallMm, fonts),
  ];
}

/** Room for the page map in the upper margin, mm. */
const mapHeightMm = 5;
const cellWidthMm = 3;
const mapWidth = ({ columns }: Tiling): number => Math.min(30, columns * cellWidthMm);

/** All sheets of the drawing that there are, in small in their places, this one filled. */
function pageMap({ tiling, column, row }: Sheet): string[] {
  if (isWhole(tiling)) return [];
  const { columns, rows, sheets, pageWidthMm, pageHeightMm } = tiling;
  const [wide, high] = [mapWidth(tiling) / columns, mapHeightMm / rows];
  const left = pageWidthMm - marginMm - mapWidth(tiling);
  const top = pageHeightMm - marginMm + 1 + mapHeightMm;
  const cells = sheets.map((tile) => {
    const here = tile.column === column && tile.row === row;
    const box = [left + (tile.column - 1) * wide, top - tile.row * high, wide, high].map(number).join(' ');
    return `${box} re ${here ? 'B' : 'S'}`;
  });
  return ['q 0.15 w', ...cells, 'Q'];
}

/** Where sheets join: the line to cut along in the middle of what they share, and crosses that fall on one another. */
function seams(sheet: Sheet, fonts: Lettering, words: readonly Box[]): string[] {
  const { tiling, column, row } = sheet;
  const [halfX, halfY] = [(overlapMm / 2) * tiling.stretchX, (overlapMm / 2) * tiling.stretchY];
  const box = shownOnPage(sheet);
  const isThere = (c: number, r: number): boolean => tiling.sheets.some((tile) => tile.column === c && tile.row === r);
  const upright = [
    { x: box.minX + halfX, to: column - 1 },
    { x: box.maxX - halfX, to: column + 1 },
  ].filter(({ to }) => isThere(to, row));
  const level = [
    { y: box.maxY - halfY, to: row - 1 },
    { y: box.minY + halfY, to: row + 1 },
  ].filter(({ to }) => isThere(column, to));
  const crosses = [
    ...upright.flatMap(({ x }) => [vec(x, box.minY + halfY), vec(x, box.maxY - halfY)]),
    ...level.flatMap(({ y }) => [vec(box.minX + halfX, y), vec(box.maxX - halfX, y)]),
  ];
  return [
    'q 0.12 w [2 1.5] 0 d 0.45 G',
    ...upright.map(({ x }) => segment(vec(x, box.minY), vec(x, box.maxY))),
    ...level.map(({ y }) => segment(vec(box.minX, y), vec(box.maxX, y))),
    'Q q 0.2 w',
    ...crosses.flatMap(({ x, y }) => [
      segment(vec(x - crossMm, y), vec(x + crossMm, y)),
      segment(vec(x, y - crossMm), vec(x, y + crossMm)),
    ]),
    'Q',
    ...upright.map(({ x, to }) => {
      const note = `cut, join to column ${to}`;
      const size = vec(smallMm, widthOf(note, smallMm, fonts));
      const from = vec(x - 0.6, box.minY + halfY + 5);
      const at = clearOf(words, from, vec(0, 1), (p) => boxBetween(vec(p.x - size.x, p.y), vec(p.x, p.y + size.y)));
      return upwards(note, at, smallMm, fonts);
    }),
    ...level.map(({ y, to }) => {
      const note = `cut, join to row ${to}`;
      const size = vec(widthOf(note, smallMm, fonts), smallMm);
      const from = vec(box.minX + halfX + 5, y + 0.6);
      return text(
        note,
        clearOf(words, from, vec(1, 0), (p) => boxBetween(p, add(p, size))),
        smallMm,
        fonts,
      );
    }),
  ];
}

/** The first place along a seam whose words keep clear of others; the first of all where none does. */
function clearOf(words: readonly Box[], from: Vec, along: Vec, boxAt: (at: Vec) => Box): Vec {
  const places = Array.from({ length: 12 }, (_, i) => add(from, scale(along, i * 12)));
  return places.find((at) => !words.some((taken) => boxesMeet(taken, boxAt(at), 3))) ?? from;
}

const boxBetween = (a: Vec, b: Vec): Box => ({ minX: a.x, minY: a.y, maxX: b.x, maxY: b.y });

const crossMm = 3;

const widthOf = (words: string, sizeMm: number, { plain }: Lettering): number =>
  plain.widthOfTextAtSize(winAnsi(words), sizeMm);

/** No letter is narrower, in font sizes, kerned as it may be: what cannot fit by this is not measured. */
const narrowest = 0.1;

function fitted(words: string, sizeMm: number, roomMm: number, fonts: Lettering): string {
  if (widthOf(words, sizeMm, fonts) <= roomMm) return words;
  let short = words.slice(0, Math.ceil(roomMm / (narrowest * sizeMm)));
  while (short.length > 0 && widthOf(`${short}…`, sizeMm, fonts) > roomMm) short = short.slice(0, -1);
  return `${short.trimEnd()}…`;
}

const text = (words: string, at: Vec, sizeMm: number, fonts: Lettering): string =>
  written(words, `1 0 0 1 ${pair(at)} Tm`, sizeMm, fonts);

/** Words that run up the page. */
const upwards = (words: string, at: Vec, sizeMm: number, fonts: Lettering): string =>
  written(words, `0 1 -1 0 ${pair(at)} Tm`, sizeMm, fonts);

/** A rim of paper first, for words that fall on the drawing. */
function written(words: string, matrix: string, sizeMm: number, { plain }: Lettering): string {
  const shown = `/${fontNames.plain} ${number(sizeMm)} Tf ${matrix} ${plain.encodeText(winAnsi(words)).toString()} Tj`;
  return `q 1 G 0.4 w 1 j BT 1 Tr ${shown} ET Q BT 0 Tr ${shown} ET`;
}
