import { builtPage } from '../tools/servePage.mjs';

/** Before the first file of page tests, so that those which run at the same time do not each build the page. */
export async function setup(): Promise<void> {
  await builtPage();
}
