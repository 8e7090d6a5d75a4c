import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { describeInBrowser } from '../support/in-browser.ts';
import { openWorkedJob, settled, type Viewer } from '../support/viewer-page.ts';

describeInBrowser('the buttons of the panes', () => {
  describe.each([
    ['a phone', { width: 390, height: 844 }],
    ['a tablet', { width: 820, height: 1180 }],
  ])('on %s', (_, size) => {
    let viewer: Viewer;
    beforeAll(async () => {
      viewer = await openWorkedJob({ size });
    }, 120_000);
    afterAll(() => viewer?.context.close());

    const open = async (step: string): Promise<void> => {
      const line = viewer.page.locator(`.steps [data-step="${step}"] button.line`);
      if ((await line.getAttribute('aria-expanded')) === 'false') await line.click();
      await settled(viewer.page);
    };
    const pxPerMm = (): Promise<number[]> =>
      viewer.page.evaluate(() =>
        [...document.querySelectorAll<SVGGElement>('.pane .plane')].map((plane) => plane.getCTM()?.a ?? 0),
      );

    it.each(['outlines', 'offer-up', 'grind'])('are beside each pane that is there, for a finger: %s', async (step) => {
      await open(step);
      const buttons = await viewer.page.evaluate(() => {
        const panes = [...document.querySelectorAll('#drawing .pane')].map((pane) => pane.getBoundingClientRect());
        return [...document.querySelectorAll<HTMLElement>('#drawing button')]
          .filter((button) => button.checkVisibility())
          .map((button) => {
            const { left, right, top, bottom, width, height } = button.getBoundingClientRect();
            const own = button.closest('figure')?.getBoundingClientRect();
            return {
              face: button.textContent,
              size: Math.min(width, height),
              isReached: document.elementFromPoint((left + right) / 2, (top + bottom) / 2) === button,
              isInOwn: own !== undefined && left >= own.left && right <= own.right && bottom <= own.bottom,
              isOnPane: panes.some(
                (pane) => left < pane.right && right > pane.left && top < pane.bottom && bottom > pane.top,
              ),
            };
          });
      });
      expect(buttons.map(({ face }) => face)).toEqual(
        step === 'outlines' ? ['+', '−', 'fit'] : ['+', '−', 'fit', '+', '−', 'fit'],
      );
      for (const { size, isReached, isInOwn, isOnPane } of buttons) {
        expect(size).toBeGreaterThanOrEqual(44);
        expect([isReached, isInOwn, isOnPane]).toEqual([true, true, false]);
      }
    });

    it('bring both panes nearer from either, and back', async () => {
      await open('offer-up');
      const before = await pxPerMm();
      for (const view of [/face.*larger$/, /side, larger$/])
        await viewer.page.getByRole('button', { name: view }).click();
      for (const [i, scale] of (await pxPerMm()).entries()) expect(scale).toBeCloseTo(2.25 * (before[i] ?? 0), 3);
      await viewer.page.getByRole('button', { name: /side, smaller$/ }).click();
      await viewer.page.getByRole('button', { name: /side, to fit$/ }).click();
      for (const [i, scale] of (await pxPerMm()).entries()) expect(scale).toBeCloseTo(before[i] ?? 0, 3);
      expect(viewer.complaints).toEqual([]);
    });
  });
});
