import type { Page } from 'playwright-core';

/** Smallest height of capitals that is read easily: ISO 9241-303, from memory, minutes of arc. */
const ARC_MINUTES = 16;
/** The back row of a class, and the height of a picture that is projected for it, m. */
const DISTANCE = 8;
const PICTURE = 1.7;
/** Height of capitals as a share of the size of type, for sans-serif faces. Common practice, no source. */
const CAPITALS = 0.7;

/** Smallest size of type in a window of some height, px. */
export function smallestType(windowHeight: number): number {
  const capitals = DISTANCE * Math.tan((ARC_MINUTES / 60 / 180) * Math.PI);
  return ((capitals / PICTURE) * windowHeight) / CAPITALS;
}

/** Every text in sight that is smaller, with its size in px. */
export function smallTexts(page: Page, least: number): Promise<string[]> {
  return page.evaluate((smallest) => {
    const found = new Set<string>();
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const { currentNode: node } = walker;
      const { parentElement } = node;
      const text = node.textContent?.trim();
      if (!text || !parentElement?.checkVisibility({ visibilityProperty: true })) continue;
      const { width } = parentElement.getBoundingClientRect();
      const size = Number.parseFloat(getComputedStyle(parentElement).fontSize);
      // One pixel wide: for those who listen.
      if (width > 1 && size < smallest) found.add(`${text.slice(0, 30)}: ${size} px`);
    }
    return [...found];
  }, least);
}
