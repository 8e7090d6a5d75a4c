import { afterEach, beforeEach, expect, it } from 'vitest';
import { describeInBrowser } from '../support/in-browser.ts';
import { openWorkedJob, type Viewer } from '../support/viewer-page.ts';

describeInBrowser('the place of a cut', () => {
  let viewer: Viewer;
  beforeEach(async () => {
    viewer = await openWorkedJob();
    await viewer.page.locator('.steps [data-step="grind"] button.line').click();
  }, 120_000);
  afterEach(() => viewer.context.close());

  /** Where what comes off lies in the face pane, in pixels from its middle, and how large it is there. */
  const cutSeen = () =>
    viewer.page.evaluate(() => {
      const pane = document.querySelector('#drawing .pane') as HTMLElement;
      const [cut, window] = [pane.querySelector('.plane .relief') as Element, pane].map((one) =>
        one.getBoundingClientRect(),
      ) as [DOMRect, DOMRect];
      return {
        x: cut.x + cut.width / 2 - window.x - window.width / 2,
        y: cut.y + cut.height / 2 - window.y - window.height / 2,
        wide: Math.max(cut.width, cut.height),
        room: Math.min(window.width, window.height),
        at: [cut.x + cut.width / 2, cut.y + cut.height / 2] as const,
      };
    });

  it('is gone to by its row in the table, and shown whole', async () => {
    const before = await cutSeen();
    await viewer.page.getByTitle('Show it on the drawing').first().click();
    const after = await cutSeen();
    expect(after.wide).toBeGreaterThan(2 * before.wide);
    expect(after.wide).toBeLessThan(after.room);
    // places are on the edge that is left, so the middle of what comes off lies beside theirs
    expect(Math.hypot(after.x, after.y)).toBeLessThan(after.room / 3);
  });

  it('is gone to where it is touched from afar, and from near only read', async () => {
    const farther = viewer.page.getByRole('button', { name: /smaller$/ }).first();
    for (let i = 0; i < 4; i += 1) await farther.click();
    const before = await cutSeen();
    await viewer.page.mouse.click(...before.at);
    const near = await cutSeen();
    expect(near.wide).toBeGreaterThan(2 * before.wide);
    await viewer.page.mouse.click(...near.at);
    expect((await cutSeen()).wide).toBeCloseTo(near.wide, 3);
  });

  it('stays in the middle of the pane where + goes nearer', async () => {
    await viewer.page.getByTitle('Show it on the drawing').first().click();
    const before = await cutSeen();
    await viewer.page
      .getByRole('button', { name: /larger$/ })
      .first()
      .click();
    const after = await cutSeen();
    const grown = after.wide / before.wide;
    expect(grown).toBeGreaterThan(1.2);
    expect(Math.hypot(after.x - grown * before.x, after.y - grown * before.y)).toBeLessThan(2);
  });
});

describeInBrowser('what is in the way', () => {
  let viewer: Viewer;
  beforeEach(async () => {
    viewer = await openWorkedJob({ size: { width: 820, height: 1180 } });
    await viewer.page.locator('.steps [data-step="offer-up"] button.line').click();
  }, 120_000);
  afterEach(() => viewer.context.close());

  /** Where the first piece of what is in the way begins in each pane, and how that lies. */
  const foulsSeen = () =>
    viewer.page.evaluate(() =>
      [...document.querySelectorAll('#drawing .pane')].map((pane) => {
        const foul = pane.querySelector('.plane .foul > path') as SVGPathElement;
        const { left, top, width, height } = pane.getBoundingClientRect();
        const { x, y } = foul.getPointAtLength(0).matrixTransform(foul.getScreenCTM() as DOMMatrix);
        return {
          at: [x, y] as const,
          isInPane: x > left && x < left + width && y > top && y < top + height,
          aside: Math.max(Math.abs(x - left - width / 2) / width, Math.abs(y - top - height / 2) / height),
          scale: foul.getScreenCTM()?.a ?? 0,
        };
      }),
    );
  type Seen = Awaited<ReturnType<typeof foulsSeen>>[number];

  it('is listed by its sections, and shown whole in both panes by them', async () => {
    const [before] = (await foulsSeen()) as [Seen, Seen];
    await viewer.page.getByRole('group', { name: 'In the way' }).getByRole('button', { name: 'ribs' }).click();
    for (const { isInPane, scale } of await foulsSeen()) {
      expect(isInPane).toBe(true);
      expect(scale).toBeGreaterThan(1.5 * before.scale);
    }
  });

  it.each([0, 1])('is gone to in both panes where it is touched in one: %i', async (pane) => {
    const before = (await foulsSeen())[pane] as Seen;
    await viewer.page.mouse.click(...before.at);
    const after = (await foulsSeen()) as [Seen, Seen];
    for (const { aside, scale } of after) {
      expect(aside).toBeLessThan(0.4);
      expect(scale).toBeGreaterThan(2 * before.scale);
    }
    await viewer.page.mouse.click(...(after[pane] as Seen).at);
    expect((await foulsSeen())[pane]?.scale).toBeCloseTo(after[0].scale, 6);
    expect(viewer.complaints).toEqual([]);
  });
});
