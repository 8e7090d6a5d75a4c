import { PDFDocument } from 'pdf-lib';
import { expect, it } from 'vitest';
import { demoToDraw } from '../../support/demos.ts';
import { dpi, hasRasteriser, pictureOf, rowInk } from '../../support/raster.ts';
import { reportOf } from '../../support/reports.ts';
import { folderWith } from '../../support/temp-folder.ts';
import { newUser } from '../support/browser.ts';
import { describeInBrowser } from '../support/in-browser.ts';

// pdftoppm of poppler-utils makes the pictures; without it nothing here can be measured
const here = hasRasteriser();

/** How much of a page, from its top down to the last ink, is used. */
function used(pdf: Uint8Array, page: number, folder: string): number {
  const picture = pictureOf(pdf, page, folder);
  const [wide, high] = [picture.width, picture.height].map((px) => (px * 25.4) / dpi) as [number, number];
  const inked = rowInk(picture, { fromX: 12, toX: wide - 12, fromY: 12, toY: high - 12 }).filter(({ ink }) => ink > 0);
  return (high - (inked.at(-1)?.mm ?? high)) / high;
}

describeInBrowser('the report as printed', () => {
  it.skipIf(!here).each(['transfer-case', 'adapter', 'starter'] as const)(
    'fills its pages but the last, on A4 and Letter: %s',
    async (demo) => {
      const context = await newUser();
      const page = await context.newPage();
      await page.setContent(reportOf(demoToDraw(demo)));
      for (const format of ['A4', 'Letter']) {
        const pdf = new Uint8Array(await page.pdf({ format, preferCSSPageSize: false }));
        const count = (await PDFDocument.load(pdf)).getPageCount();
        const folder = folderWith();
        const pages = Array.from({ length: count - 1 }, (_, i) => used(pdf, i + 1, folder));
        expect(pages.filter((share) => share < 0.6)).toEqual([]);
      }
      await context.close();
    },
  );
});
