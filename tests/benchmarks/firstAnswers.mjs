import { launchBrowser } from '../tools/browser.mjs';
import { servePage } from '../tools/servePage.mjs';

/**
 * How long a person waits for pretuning in the built page, in a headless browser with the stage folded away, ms from the press: for gains
 * with what the linear analysis says of them, for a tuning that has been run, for the result.
 */
export async function firstAnswers() {
  const served = await servePage();
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    page.setDefaultTimeout(0);
    await page.goto(served.url);
    await page.locator('.clock .state', { hasText: /Running|Paused/ }).waitFor();
    await page.addStyleTag({ content: '#stage > .stage { display: none }' });
    await page.getByRole('button', { name: 'Pretune …', exact: true }).click();
    await page.getByRole('dialog', { name: 'Automatic pretuning' }).waitFor();
    await page.evaluate(watch, {
      press: '.pretune button.primary',
      signs: {
        'a first answer': ['.pretune-so-far', '(First answer|Best so far)'],
        'a tuning that has run': ['.pretune-so-far', 'Best so far'],
        'the result': ['.pretune-result', 'The result'],
      },
    });
    await page.waitForFunction(() => Object.values(globalThis.waited).every((ms) => ms !== null), null, {
      timeout: 0,
    });
    return await page.evaluate(() => globalThis.waited);
  } finally {
    await browser.close();
    await served.close();
  }
}

/** Runs in the page: presses, and notes when each text first stands in its place. */
function watch({ press, signs }) {
  const waited = Object.fromEntries(Object.keys(signs).map((name) => [name, null]));
  globalThis.waited = waited;
  const begun = performance.now();
  const look = () => {
    for (const [name, [place, text]] of Object.entries(signs)) {
      const shown = document.querySelector(place);
      if (waited[name] === null && shown && !shown.hidden && new RegExp(text).test(shown.textContent))
        waited[name] = Math.round(performance.now() - begun);
    }
  };
  new MutationObserver(look).observe(document.body, {
    subtree: true,
    childList: true,
    characterData: true,
    attributes: true,
  });
  document.querySelector(press).click();
}
