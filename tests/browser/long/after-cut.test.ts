import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser } from '../support/in-browser.ts';
import { openWorkedJob, type Viewer } from '../support/viewer-page.ts';

describeInBrowser('what is in the way, once it is known what comes off', () => {
  let viewer: Viewer;
  beforeAll(async () => {
    viewer = await openWorkedJob();
  }, 120_000);
  afterAll(() => viewer?.context.close());

  it.each([0, 1])('is drawn over what comes off, in pane %i', async (pane) => {
    const isOver = await viewer.page
      .locator('#drawing .pane')
      .nth(pane)
      .evaluate((element) => {
        const [foul, relief] = ['foul', 'relief'].map((role) => element.querySelector(`.plane .${role} > *`));
        return foul && relief && relief.compareDocumentPosition(foul) === Node.DOCUMENT_POSITION_FOLLOWING;
      });
    expect(isOver).toBe(true);
  });

  it.each(['light', 'dark'] as const)(
    'is told from it by hatching and by tone, without colour, when it is %s',
    async (colorScheme) => {
      const { page } = viewer;
      await page.emulateMedia({ colorScheme });
      const [foul, relief] = await page.evaluate(() =>
        ['foul', 'relief'].map((role) => {
          const area = document.querySelector(`.plane .${role} > *`) as Element;
          const [, pattern = ''] = /url\("?#([^")]+)/.exec(getComputedStyle(area).fill) ?? [];
          const [tone, lines] = document.getElementById(pattern)?.children ?? [];
          const [r = 0, g = 0, b = 0] = tone
            ? (getComputedStyle(tone)
                .fill.match(/[\d.]+/g)
                ?.map(Number) ?? [])
            : [];
          return { grey: 0.2126 * r + 0.7152 * g + 0.0722 * b, lines: lines?.getAttribute('d') };
        }),
      );
      expect(Math.abs((foul?.grey ?? 0) - (relief?.grey ?? 0))).toBeGreaterThan(60);
      expect(foul?.lines).toBeTruthy();
      expect(foul?.lines).not.toBe(relief?.lines);
    },
  );

  it('is hatched as coarsely on the screen when it is looked at from nearer', async () => {
    const { page } = viewer;
    const pitch = (): Promise<number> =>
      page.evaluate(() => {
        const pattern = document.getElementById('foul-hatching') as unknown as SVGPatternElement;
        const plane = document.querySelector('.pane .plane') as SVGGElement;
        const { a, b } = (plane.getCTM() as DOMMatrix).multiply(pattern.patternTransform.baseVal.consolidate()?.matrix);
        return Math.hypot(a, b);
      });
    const before = await pitch();
    await page
      .getByRole('button', { name: /larger$/ })
      .first()
      .click();
    expect(await pitch()).toBeCloseTo(before, 5);
    await page
      .getByRole('button', { name: /to fit$/ })
      .first()
      .click();
  });

  it('is named in the key beside what comes off', async () => {
    expect(await viewer.page.locator('figure .key li').allTextContents()).toEqual(['in the way', 'take off']);
  });

  it('leaves two curves of the clearance, told apart by their lines and named', async () => {
    const { page } = viewer;
    const [asItIs, after] = await page.evaluate(() =>
      ['clearance-curve', 'clearance-after'].map((line) => {
        const path = document.querySelector(`.curve .${line}`) as SVGPathElement;
        const { bottom } = path.getBoundingClientRect();
        return { dashes: getComputedStyle(path).strokeDasharray, bottom };
      }),
    );
    expect(asItIs?.dashes).toBe('none');
    expect(after?.dashes).not.toBe('none');
    expect(after?.bottom).toBeLessThan((asItIs?.bottom ?? 0) - 10);
    expect(await page.locator('#way-in .key li:not(.unknown)').allTextContents()).toEqual([
      'as it is',
      'after the cut',
    ]);
    expect(viewer.complaints).toEqual([]);
  });
});
