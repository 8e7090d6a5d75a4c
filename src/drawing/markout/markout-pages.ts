import { sheetsOf } from '../pdf/pdf.ts';
import { cornerOnPage } from '../pdf/pdf-page.ts';
import { type BarReading, trueBars } from '../scene/check-bars.ts';
import { type PaperName, papers } from '../scene/papers.ts';
import { svgOf } from '../svg/svg.ts';
import type { MarkoutSheet } from './markout-sheets.ts';
import { paperFor } from './sheet-files.ts';

/** A page as it will be printed: which drawing it shows, and where that lies on it from its upper left corner, mm. */
export interface PagePreview {
  readonly drawing: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly drawnLeftMm: number;
  readonly drawnTopMm: number;
  readonly drawnWidthMm: number;
}

/** What a sheet will look like on each paper. */
export interface SheetPreview {
  readonly name: string;
  readonly purpose: string;
  /** Its drawings as SVG. */
  readonly drawings: readonly string[];
  readonly on: Readonly<
    Record<PaperName, { readonly count: number; readonly printable: boolean; readonly pages: readonly PagePreview[] }>
  >;
}

/** A sheet to look at before it is printed; no pages where they would be too many to print. */
export function sheetShown(sheet: MarkoutSheet, bars: BarReading = trueBars): SheetPreview {
  const scenes = sheet.scenes(false);
  const on = (name: PaperName): SheetPreview['on'][PaperName] => {
    const options = { paper: papers[name], bars };
    const paper = paperFor(sheet, options);
    return { ...paper, pages: paper.printable ? pagesOf(sheetsOf(scenes, options)) : [] };
  };
  return {
    name: sheet.name,
    purpose: sheet.purpose,
    drawings: scenes.map(svgOf),
    on: { a4: on('a4'), a3: on('a3'), letter: on('letter') },
  };
}

const pagesOf = (printed: ReturnType<typeof sheetsOf>): PagePreview[] =>
  printed.flatMap(({ scene, sheets }, drawing) =>
    sheets.map((sheet): PagePreview => {
      const { pageWidthMm, pageHeightMm, stretchX, stretchY } = sheet.tiling;
      const corner = cornerOnPage(sheet, scene.heightMm);
      return {
        drawing,
        widthMm: pageWidthMm,
        heightMm: pageHeightMm,
        drawnLeftMm: corner.x,
        drawnTopMm: pageHeightMm - corner.y - scene.heightMm * stretchY,
        drawnWidthMm: scene.widthMm * stretchX,
      };
    }),
  );
