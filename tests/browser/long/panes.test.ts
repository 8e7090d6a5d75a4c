import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser } from '../support/in-browser.ts';
import { openViewer, settled, type Viewer } from '../support/viewer-page.ts';

/** How far what is drawn in mm reaches out of each pane, and its middle from the pane's, in pixels across and up. */
interface Lie {
  readonly out: number;
  readonly aside: number;
}

describeInBrowser('the two views of a job', () => {
  let viewer: Viewer;
  beforeAll(async () => {
    viewer = await openViewer();
    await viewer.page.setViewportSize({ width: 390, height: 844 });
    await viewer.page.getByRole('button', { name: 'Look at a worked job' }).click();
    await settled(viewer.page);
  }, 120_000);
  afterAll(() => viewer?.context.close());

  const open = (step: string): Promise<void> => viewer.page.locator(`.steps [data-step="${step}"] button.line`).click();
  const lies = (): Promise<Lie[]> =>
    viewer.page.evaluate(async () => {
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
      return [...document.querySelectorAll<HTMLElement>('#drawing .pane')].map((pane) => {
        const seen = pane.getBoundingClientRect();
        // the moving part is turned, and the box that the browser tells of it larger than it is; how far was traced may lie outside
        const boxes = [
          ...pane.querySelectorAll(
            '.plane > .joint g:not(.moving-part, .moving-part *, .cut, .cut *, .traced, :has(.traced))',
          ),
        ]
          .map((element) => element.getBoundingClientRect())
          .filter(({ width }) => width > 0);
        const [left, right] = [Math.min(...boxes.map((b) => b.left)), Math.max(...boxes.map((b) => b.right))];
        const [top, bottom] = [Math.min(...boxes.map((b) => b.top)), Math.max(...boxes.map((b) => b.bottom))];
        const aside = Math.abs(left + right - seen.left - seen.right) / 2;
        const out = Math.max(seen.left - left, right - seen.right, seen.top - top, bottom - seen.bottom);
        return { out, aside };
      });
    });
  const bothWhole = async (): Promise<void> => {
    for (const { out, aside } of await lies()) {
      expect(out).toBeLessThan(0);
      expect(aside).toBeLessThan(40);
    }
  };

  it('show all of it after the outlines were looked at, on a phone', async () => {
    await bothWhole();
    await open('outlines');
    await open('offer-up');
    await bothWhole();
  });

  it.each([
    [820, 1180],
    [1440, 900],
    [2560, 1440],
    [390, 844],
  ])('show all of it when the window becomes %i × %i', async (width, height) => {
    await viewer.page.setViewportSize({ width, height });
    await bothWhole();
  });

  it('stay where the hand has put them, and show all again when asked', async () => {
    const { page } = viewer;
    await page.setViewportSize({ width: 1440, height: 900 });
    const larger = page.getByRole('button', { name: /larger$/ }).first();
    for (let i = 0; i < 5; i++) await larger.click();
    await page.setViewportSize({ width: 1300, height: 900 });
    expect((await lies())[0]?.out).toBeGreaterThan(100);
    await page
      .getByRole('button', { name: /to fit$/ })
      .first()
      .click();
    await bothWhole();
    expect(viewer.complaints).toEqual([]);
  });

  it('say from which side, and do not turn round whatever is edited', async () => {
    const { page } = viewer;
    const said = page.locator('#drawing figure').nth(1).locator('figcaption');
    expect(await said.textContent()).toBe('Seen from the right');
    await open('dowel-up');
    // all of both castings comes to lie left of the crank
    await page.getByRole('combobox', { name: 'Crank axis' }).selectOption('point');
    const x = page.getByRole('textbox', { name: /^x/ });
    await x.fill('900');
    await x.press('Enter');
    await settled(page);
    for (const step of ['offer-up', 'grind', 'mark-out']) {
      await open(step);
      await settled(page);
      expect(await said.textContent()).toBe('Seen from the right');
    }
  });
});
