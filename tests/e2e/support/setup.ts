import type { TestProject } from 'vitest/node';
import { present } from '../../../shared/core/at.ts';
import { serveBrowser } from '../../tools/browser.mjs';
import { servePage } from '../../tools/servePage.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built page. */
    readonly pageUrl: string;
    /** Folder of the built page. */
    readonly pageFolder: string;
    /** Where Playwright connects to the browser of all page tests. */
    readonly browserEndpoint: string;
  }
}

/** Before the first file of page tests: one server and one browser for all of them. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const [served, browser] = await Promise.all([servePage(), serveBrowser()]);
  project.provide('pageUrl', present(served.url));
  project.provide('pageFolder', served.folder);
  project.provide('browserEndpoint', browser.wsEndpoint());
  return async () => {
    await browser.close();
    await served.close();
  };
}
