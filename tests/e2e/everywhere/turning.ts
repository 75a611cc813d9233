import type { Page } from 'playwright-core';
import { present } from '../../../shared/core/at.ts';

/** Of the page; of eight of them the picture is drawn even where it is slowest. */
const REFRESHES = 40;

/** How many places the mark on the table takes in the picture from when the pointer lets go of the view. */
export async function placesAfterTurning(page: Page): Promise<number> {
  const stage = present(await page.locator('.stage > canvas').boundingBox());
  const [x, y] = [stage.x + 0.85 * stage.width, stage.y + 0.2 * stage.height];
  const counting = await page.evaluateHandle(countPlaces, REFRESHES);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x - 120, y + 20, { steps: 4 });
  await page.mouse.up();
  return counting.evaluate(({ places }) => places);
}

/** Runs in the page; within an object, so that it is not waited for yet. */
function countPlaces(refreshes: number): { places: Promise<number> } {
  const mark = document.querySelector('.stage-lines circle') as SVGCircleElement;
  const seen = new Set<string>();
  const places = new Promise<number>((resolve) => {
    const look = (left: number) => {
      seen.add(`${mark.getAttribute('cx')} ${mark.getAttribute('cy')}`);
      if (left > 0) requestAnimationFrame(() => look(left - 1));
      else resolve(seen.size);
    };
    window.addEventListener('pointerup', () => look(refreshes), { once: true, capture: true });
  });
  return { places };
}
