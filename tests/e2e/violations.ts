import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** Serious and critical findings of axe-core, which checks WCAG 2 rules that a program can check. */
export async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() => (window as unknown as { axe: typeof axe }).axe.run());
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.target.join(' ')}`));
}
