import type { Page } from 'playwright-core';
import { present } from '../../../shared/core/at.ts';

/** Where a part of the page is, CSS pixels. */
export const box = async (page: Page, selector: string) =>
  present(await page.locator(selector).boundingBox());
