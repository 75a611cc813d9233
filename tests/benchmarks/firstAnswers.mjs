import { onFoldedPage } from './page/foldedPage.mjs';

/**
 * How long a person waits for pretuning in the built page, in a headless browser with the stage folded away, ms from the press: for gains
 * with what the linear analysis says of them, for a tuning that has been run, for the result.
 */
export function firstAnswers() {
  return onFoldedPage(async (page) => {
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
  });
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
