/** Sizes of lettering and lines on a sheet, mm. */
export interface Sizes {
  /** Font size of ordinary lettering. */
  readonly textMm: number;
  readonly headingMm: number;
  readonly verdictMm: number;
  /** Width of a wide line: near what ISO 3098 (from memory) has for the strokes of capitals. */
  readonly penMm: number;
  readonly hatchMm: number;
}

const smallestTextMm = 2.6;
const largestTextMm = 12;
/** Rows of lettering down the height of the parts: on a screen that shows the whole sheet they can still be read. */
const rowsOfText = 43;

/** Lettering to suit drawn parts so wide or high, so that a large sheet seen whole can still be read. */
export function sizesFor(extentMm: number): Sizes {
  const textMm = Math.min(largestTextMm, Math.max(smallestTextMm, extentMm / rowsOfText));
  return { textMm, headingMm: 1.3 * textMm, verdictMm: 1.7 * textMm, penMm: 0.13 * textMm, hatchMm: 0.32 * textMm };
}
