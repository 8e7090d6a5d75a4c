import { PDFDocument, type PDFFont, PDFName, type PDFRef, StandardFonts } from 'pdf-lib';
import { type BarReading, trueBars } from '../scene/check-bars.ts';
import { wordBoxes } from '../scene/marks.ts';
import { type Paper, type Tiling, tilingOf } from '../scene/papers.ts';
import type { Scene } from '../scene/scene.ts';
import { number } from '../svg/svg-paint.ts';
import { fontNames, type Lettering, opacitiesOf, sceneOperators } from './pdf-marks.ts';
import { cornerOnPage, furniture, ptPerMm, type Sheet, shownOnPage } from './pdf-page.ts';
import { winAnsi } from './pdf-text.ts';
import { printedWidthMm } from './printed-width.ts';

export interface PrintOptions {
  readonly paper: Paper;
  /** What this printer made of the 150 mm bars; where given, its error is taken off. */
  readonly bars?: BarReading;
}

/**
 * Drawings at true size as one PDF, each parted into as few sheets as can be, with check bars on every sheet. The same
 * drawings give the same bytes: nothing of the day or the machine goes in.
 */
export async function pdfOf(title: string, scenes: readonly Scene[], options: PrintOptions): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(winAnsi(title));
  document.setCreator('Fettle');
  const fonts = {
    plain: await document.embedFont(StandardFonts.Helvetica),
    bold: await document.embedFont(StandardFonts.HelveticaBold),
    slanted: await document.embedFont(StandardFonts.HelveticaOblique),
  };
  const printed = sheetsOf(scenes, options);
  for (const { scene, sheets } of printed) {
    const form = formOf(document, scene, fonts);
    for (const sheet of sheets) addSheet(document, sheet, scene, form, fonts);
  }
  return document.save({ useObjectStreams: false, addDefaultPage: false });
}

/** How many sheets of paper some drawings take. */
export const sheetCount = (scenes: readonly Scene[], { paper, bars = trueBars }: PrintOptions): number =>
  scenes.reduce((sum, scene) => sum + tilingOf(scene, paper, bars, printedWidthMm).sheets.length, 0);

export interface PrintedScene {
  readonly scene: Scene;
  readonly sheets: readonly Sheet[];
}

/** The sheets of each drawing but blank ones: row by row from its upper left corner, numbered through the document. */
export function sheetsOf(scenes: readonly Scene[], options: PrintOptions): PrintedScene[] {
  const tilings = scenes.map((scene) => tilingOf(scene, options.paper, options.bars ?? trueBars, printedWidthMm));
  const of = tilings.reduce((sum, tiling) => sum + tiling.sheets.length, 0);
  let before = 0;
  return scenes.map((scene, i) => {
    const tiling = tilings[i] as Tiling;
    const sheets = tiling.sheets.map((tile, k) => ({ ...tile, title: scene.title, tiling, sheet: before + k + 1, of }));
    before += sheets.length;
    return { scene, sheets };
  });
}

/** A drawing as one form that all its sheets show a part of. */
function formOf({ context }: PDFDocument, scene: Scene, fonts: Lettering): PDFRef {
  const opacities = [...opacitiesOf(scene)].map(([name, ca]) => [name, { Type: 'ExtGState', ca }] as const);
  return context.register(
    context.flateStream(sceneOperators(scene, fonts), {
      Type: 'XObject',
      Subtype: 'Form',
      BBox: [0, 0, scene.widthMm, scene.heightMm],
      Resources: { Font: fontResources(fonts), ExtGState: Object.fromEntries(opacities) },
    }),
  );
}

const fontResources = ({ plain, bold, slanted }: Lettering): Record<string, PDFRef> => {
  const refs = { plain, bold, slanted } satisfies Record<keyof typeof fontNames, PDFFont>;
  return Object.fromEntries(
    Object.entries(refs).map(([face, { ref }]) => [fontNames[face as keyof typeof fontNames], ref]),
  );
};

function addSheet(document: PDFDocument, sheet: Sheet, scene: Scene, form: PDFRef, fonts: Lettering): void {
  const { context } = document;
  const { pageWidthMm, pageHeightMm } = sheet.tiling;
  const page = document.addPage([pageWidthMm * ptPerMm, pageHeightMm * ptPerMm]);
  page.node.set(PDFName.of('Contents'), context.register(context.stream(pageOperators(sheet, scene, fonts))));
  page.node.set(PDFName.of('Resources'), context.obj({ Font: fontResources(fonts), XObject: { Drawing: form } }));
}

/** The part of the drawing that falls on the sheet, and what the sheet carries besides; all in mm. */
function pageOperators(sheet: Sheet, scene: Scene, fonts: Lettering): string {
  const { stretchX, stretchY } = sheet.tiling;
  const { x, y } = cornerOnPage(sheet, scene.heightMm);
  const words = wordBoxes(scene, printedWidthMm).map(({ minX, minY, maxX, maxY }) => ({
    minX: x + stretchX * minX,
    minY: y + stretchY * minY,
    maxX: x + stretchX * maxX,
    maxY: y + stretchY * maxY,
  }));
  const { minX, minY, maxX, maxY } = shownOnPage(sheet);
  const shown = [minX, minY, maxX - minX, maxY - minY].map(number).join(' ');
  const placed = [stretchX, 0, 0, stretchY, x, y].map((value) => value.toFixed(9)).join(' ');
  const scale = ptPerMm.toFixed(12);
  return [
    `q ${scale} 0 0 ${scale} 0 0 cm`,
    `q ${shown} re W n ${placed} cm /Drawing Do Q`,
    furniture(sheet, fonts, words),
    'Q',
  ].join('\n');
}
