import { type PrintOptions, pdfOf, sheetCount } from '../pdf/pdf.ts';
import { svgOf } from '../svg/svg.ts';
import type { MarkoutSheet } from './markout-sheets.ts';

/** One file to mark out by. */
export interface MarkoutFile {
  readonly name: string;
  readonly as: 'pdf' | 'svg' | 'dxf' | 'csv';
  readonly content: string | Uint8Array;
}

/** A PDF that would take more sheets than this is not made: nobody joins them. */
export const mostSheets = 200;

/** How many sheets of paper the drawings take, and whether anybody would join so many. */
export function paperFor(sheet: MarkoutSheet, options: PrintOptions): { count: number; printable: boolean } {
  const count = sheetCount(sheet.scenes(false), options);
  return { count, printable: count <= mostSheets };
}

/** All files that a sheet is given in, or those of one kind. */
export async function sheetFiles(
  sheet: MarkoutSheet,
  options: PrintOptions,
  only: MarkoutFile['as'] | null = null,
): Promise<MarkoutFile[]> {
  const wanted = (as: MarkoutFile['as']): boolean => only === null || only === as;
  const file = (as: MarkoutFile['as'], content: string | Uint8Array | null, number = ''): MarkoutFile[] =>
    content === null || !wanted(as) ? [] : [{ name: `${sheet.name}${number}.${as}`, as, content }];
  const prints = wanted('pdf') && paperFor(sheet, options).printable;
  // a table's places are figures: there is no drawing of them to lay on the casting
  const drawings = wanted('svg') && sheet.csv === null ? sheet.scenes(true) : [];
  return [
    ...file('pdf', prints ? await pdfOf(sheet.name, sheet.scenes(false), options) : null),
    ...drawings.flatMap((scene, i) => file('svg', svgOf(scene), drawings.length === 1 ? '' : `-${i + 1}`)),
    ...file('dxf', sheet.dxf),
    ...file('csv', sheet.csv),
  ];
}
