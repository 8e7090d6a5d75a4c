import { StandardFontEmbedder, StandardFonts } from 'pdf-lib';
import type { WidthOfText } from '../scene/text-size.ts';
import { winAnsi } from './pdf-text.ts';

// the embedder's own names for fonts are those of the enum, which the library does not hand out
const fontOf = (name: StandardFonts): StandardFontEmbedder =>
  StandardFontEmbedder.for(name as string as Parameters<typeof StandardFontEmbedder.for>[0]);

const faces = {
  plain: { font: fontOf(StandardFonts.Helvetica), ems: new Map<string, number>() },
  bold: { font: fontOf(StandardFonts.HelveticaBold), ems: new Map<string, number>() },
};

/** How wide a line of text is as printed: letter by letter, since a PDF shows it unkerned; slanted is as wide as plain. */
export const printedWidthMm: WidthOfText = (text, sizeMm, bold) => {
  const { font, ems } = faces[bold ? 'bold' : 'plain'];
  let sum = 0;
  for (const letter of winAnsi(text)) {
    const width = ems.get(letter) ?? font.widthOfTextAtSize(letter, 1);
    ems.set(letter, width);
    sum += width;
  }
  return sum * sizeMm;
};
