import type { CDPSession } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeInBrowser } from './support/in-browser.ts';
import { openViewer, settled, type Viewer } from './support/viewer-page.ts';

interface Finger {
  readonly x: number;
  readonly y: number;
  readonly id: number;
}

describeInBrowser('a second finger while a handle is held', () => {
  let viewer: Viewer;
  let cdp: CDPSession;

  beforeAll(async () => {
    viewer = await openViewer();
    cdp = await viewer.context.newCDPSession(viewer.page);
    await viewer.page.getByRole('button', { name: 'Look at a worked job' }).click();
    await settled(viewer.page);
    await viewer.page.locator('.steps [data-step="offer-up"] button.line').click();
    await settled(viewer.page);
  });
  afterAll(() => viewer?.context.close());

  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...touchPoints: Finger[]): Promise<unknown> =>
    cdp.send('Input.dispatchTouchEvent', { type, touchPoints });
  const undo = () => viewer.page.getByRole('button', { name: 'Undo' });
  const pxPerMm = () =>
    viewer.page.evaluate(() => document.querySelector<SVGGElement>('.pane .plane')?.getCTM()?.a ?? 0);
  const handle = async (): Promise<Finger> => {
    const {
      x = 0,
      y = 0,
      width = 0,
      height = 0,
    } = (await viewer.page.locator('.pane').first().locator('circle.handle').boundingBox()) ?? {};
    return { x: x + width / 2, y: y + height / 2, id: 0 };
  };

  it('takes back what the first did, and stretches the view about both', async () => {
    const before = await pxPerMm();
    const held = await handle();
    const dragged = { ...held, x: held.x + 40 };
    await touch('touchStart', held);
    await touch('touchMove', dragged);
    await expect.poll(() => undo().isEnabled()).toBe(true);
    const second = { x: held.x + 40, y: held.y + 100, id: 1 };
    await touch('touchStart', dragged, second);
    await expect.poll(() => undo().isEnabled()).toBe(false);
    await touch('touchMove', dragged, { ...second, y: held.y + 200 });
    await touch('touchEnd');
    await expect.poll(pxPerMm).toBeCloseTo(2 * before, 1);
    expect(await undo().isEnabled()).toBe(false);
  });
});
