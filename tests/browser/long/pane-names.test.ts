import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { describeInBrowser } from '../support/in-browser.ts';
import { openWorkedJob, settled, type Viewer } from '../support/viewer-page.ts';

describeInBrowser('the names on the drawing', () => {
  describe.each([
    ['a phone', { width: 390, height: 844 }],
    ['a laptop', { width: 1440, height: 900 }],
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
    /** The names that are seen, and which of them lie on one another or reach out of the pane. */
    const names = () =>
      viewer.page.evaluate(async () => {
        await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
        const pane = document.querySelector('#drawing .pane') as HTMLElement;
        const { left, right } = pane.getBoundingClientRect();
        const seen = [...pane.querySelectorAll('.labels text')]
          .filter((text) => text.checkVisibility())
          .map((text) => ({
            name: text.textContent ?? '',
            box: text.getBoundingClientRect(),
            // what is said of the closest place goes where that goes
            isName: !text.classList.contains('witness-words'),
          }))
          .filter(({ box }) => box.width > 0);
        const meet = (a: DOMRect, b: DOMRect) =>
          a.left < b.right && b.left < a.right && a.top < b.bottom - 2 && b.top < a.bottom - 2;
        const crowded = seen.flatMap((a, i) =>
          seen.slice(i + 1).flatMap((b) => (meet(a.box, b.box) ? [`${a.name} on ${b.name}`] : [])),
        );
        const out = seen
          .filter(({ isName, box }) => isName && (box.left < left - 1 || box.right > right + 1))
          .map(({ name }) => name);
        return { names: seen.map(({ name }) => name), wrong: [...crowded, ...out] };
      });
    const atEveryZoom = async (): Promise<string[]> => {
      const found = new Set<string>();
      const button = (name: RegExp) => viewer.page.getByRole('button', { name }).first();
      await button(/to fit$/).click();
      for (const turn of [/larger$/, /smaller$/])
        for (let i = 0; i < (turn.source.startsWith('l') ? 4 : 8); i += 1) {
          const seen = await names();
          expect(seen.wrong).toEqual([]);
          for (const name of seen.names) found.add(name);
          await button(turn).click();
        }
      await button(/to fit$/).click();
      return [...found];
    };

    it.each(['dowel-up', 'offer-up', 'grind'])(
      'keep clear of one another, and dowels keep theirs: %s',
      async (step) => {
        await open(step);
        expect(await atEveryZoom()).toEqual(expect.arrayContaining(['D1', 'D2']));
      },
    );

    it('keep clear of one another where holes are listed while outlines are traced', async () => {
      await open('outlines');
      await viewer.page.getByRole('button', { name: /^holes/ }).click();
      expect(await atEveryZoom()).toEqual(expect.arrayContaining(['D1', 'D2', 'B1', 'B6']));
      expect(viewer.complaints).toEqual([]);
    });
  });
});
