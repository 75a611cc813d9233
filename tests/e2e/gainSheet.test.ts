import { expect, it } from 'vitest';
import { SCENES } from '../../scenes/index.ts';
import { at, present } from '../../shared/core/at.ts';
import { startingPoint } from '../../shared/protocol/analysis.ts';
import { gainSheet } from '../../shared/sheet/gainSheet.ts';
import { gainSheetHtml } from '../../src/paper/gainSheet/gainSheetHtml.ts';
import { analyse } from '../../workers/analysis/analyse.ts';
import { measureRun } from '../../workers/run/measureRun.ts';
import { pageTests } from './page.ts';
import { allViolations } from './violations.ts';

const { blank } = pageTests();

/** The longest sheet there is: a screw drive with all filters on. */
function longestSheet(): string {
  const scene = present(SCENES.find(({ driveType }) => driveType === 'screw'));
  const parameters = { ...scene.parameters, notch1: true, notch2: true, lowpass: true };
  const given = { ...scene, parameters };
  const point = startingPoint(parameters);
  const analysis = analyse(parameters, point);
  const sheet = gainSheet(given, {
    loops: [{ point, figures: analysis.figures }],
    move: at(measureRun(given, 1.2).moves, 0),
  });
  return gainSheetHtml(sheet, analysis, '1 May 2030');
}

async function openSheet() {
  const page = await blank({ colorScheme: 'dark' });
  await page.setContent(longestSheet());
  return page;
}

it('has no accessibility fault that axe can find', async () => {
  expect(await allViolations(await openSheet())).toEqual([]);
});

it('is black on white, its text 14 px and more but for indices, and fits the width', async () => {
  const page = await openSheet();
  const seen = await page.evaluate(() => {
    const sizes = [...document.querySelectorAll('body *')]
      .filter((each) => each.tagName !== 'SUB' && each.matches(':not(style)'))
      .filter((each) => [...each.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()))
      .map((each) => Number.parseFloat(getComputedStyle(each).fontSize));
    const { backgroundColor, color } = getComputedStyle(document.body);
    return {
      smallest: Math.min(...sizes),
      backgroundColor,
      color,
      overflow: document.documentElement.scrollWidth - document.documentElement.clientWidth,
    };
  });
  expect(seen).toEqual({
    smallest: 14,
    backgroundColor: 'rgb(255, 255, 255)',
    color: 'rgb(0, 0, 0)',
    overflow: 0,
  });
});

it.each(['A4', 'Letter'])(
  'prints on %s: every page numbered, nothing wider than the paper',
  async (format) => {
    const page = await openSheet();
    const pdf = await page.pdf({ format });
    const pages = present(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).length;
    expect(pages).toBeGreaterThan(6);
    expect(pages).toBeLessThan(15);
    // Printed width of the paper less its margins, at 96 px an inch.
    const width = ((format === 'A4' ? 210 : 215.9) - 28) * (96 / 25.4);
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: Math.floor(width), height: 900 });
    const overflow = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(overflow).toBe(0);
  },
);
