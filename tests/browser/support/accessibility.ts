import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe-core finds wrong with a page as it stands: the rule, and the first element that breaks it. */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    // @ts-expect-error put there by the line above
    const { violations } = await window.axe.run();
    return violations.map(({ id, nodes }: { id: string; nodes: { html: string }[] }) => `${id}: ${nodes[0]?.html}`);
  });
}
