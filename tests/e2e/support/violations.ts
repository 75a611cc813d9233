import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** Serious and critical findings of axe-core, which checks WCAG 2 rules that a program can check. */
export async function violations(page: Page): Promise<string[]> {
  return (await findings(page)).filter(({ serious }) => serious).map(({ text }) => text);
}

/** Minor and moderate ones too. */
export async function allViolations(page: Page): Promise<string[]> {
  return (await findings(page)).map(({ text }) => text);
}

async function findings(page: Page): Promise<{ serious: boolean; text: string }[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() => (window as unknown as { axe: typeof axe }).axe.run());
  return violations.flatMap(({ id, impact, nodes }) =>
    nodes.map(({ target }) => ({
      serious: impact === 'serious' || impact === 'critical',
      text: `${id}: ${target.join(' ')}`,
    })),
  );
}
