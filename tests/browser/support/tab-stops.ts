import type { Page } from 'playwright-core';

/** A place Tab comes to. */
export interface Stop {
  readonly name: string;
  /** Width in pixels of the ring round what has the focus; none is 0, and so is one out of sight. */
  readonly ringPx: number;
  /** Whether anything has the focus: between the last stop and the first nothing need have. */
  readonly any: boolean;
  /** Which of what was marked usable it is; none is -1. */
  readonly at: number;
}

/** What has the focus, by its label. */
const focused = (page: Page): Promise<Stop> =>
  page.evaluate(() => {
    const element = document.activeElement;
    if (element === null || element === document.body) return { name: '', ringPx: 0, any: false, at: -1 };
    const { outlineStyle, outlineWidth } = getComputedStyle(element);
    const label = element.getAttribute('aria-label') ?? element.closest('label')?.textContent ?? element.textContent;
    const { left, top, right, bottom, width, height } = element.getBoundingClientRect();
    const inSight = Math.min(width, height) > 1 && right > 0 && bottom > 0 && left < innerWidth && top < innerHeight;
    const ringPx = outlineStyle === 'none' || !inSight ? 0 : Number.parseFloat(outlineWidth);
    // @ts-expect-error put there by the function below
    const at: number = (window.stops ?? []).indexOf(element);
    return { name: label || element.outerHTML.slice(0, 120), ringPx, any: true, at };
  });

const usable = 'a[href], button, input, select, textarea, summary, .pane, [role="slider"], [tabindex="0"]';

/** What can be used on the page now, in a global of the page: all that Tab must come to. */
const markUsable = (page: Page): Promise<number> =>
  page.evaluate((selector) => {
    const stops = [...document.querySelectorAll<HTMLElement>(selector)]
      .filter((each) => each.checkVisibility({ visibilityProperty: true }) && !each.matches(':disabled'))
      // of radio buttons Tab comes to the chosen one alone; the arrow keys go on from there
      .filter((each) => !each.matches('[type="radio"]:not(:checked)'));
    Object.assign(window, { stops });
    return stops.length;
  }, usable);

/** Goes all round by one key until it is where it began: what it did not come to, and every stop. */
export async function round(page: Page, key: 'Tab' | 'Shift+Tab'): Promise<{ missed: string[]; stops: Stop[] }> {
  const count = await markUsable(page);
  const came: number[] = [];
  const stops: Stop[] = [];
  for (let i = 0; i < 2 * count + 20; i += 1) {
    await page.keyboard.press(key);
    const stop = await focused(page);
    if (stop.at === came[0]) break;
    if (stop.at >= 0) came.push(stop.at);
    stops.push(stop);
  }
  const missed = await page.evaluate(
    // @ts-expect-error put there by the function above
    (reached) => window.stops.filter((_, i) => !reached.includes(i)).map((each) => each.outerHTML.slice(0, 160)),
    came,
  );
  return { missed, stops };
}

/** The stops at which no eye could tell what has the focus. */
export const unseenOf = (stops: readonly Stop[]): Stop[] => stops.filter(({ any, ringPx }) => any && !(ringPx >= 2));

/** Goes on by Tab until a name is reached; the stops on the way, which every eye must be able to follow. */
export async function tabTo(page: Page, name: RegExp): Promise<Stop[]> {
  const stops: Stop[] = [];
  for (let i = 0; i < 150; i += 1) {
    await page.keyboard.press('Tab');
    const stop = await focused(page);
    stops.push(stop);
    if (name.test(stop.name)) return stops;
  }
  throw new Error(`Tab does not come to ${name}`);
}
