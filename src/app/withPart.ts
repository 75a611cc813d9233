import { errorText } from '../clients/errorText.ts';
import type { Messages } from '../ui/messages.ts';

interface Page {
  readonly messages: Messages;
  readonly keeper: { keep(): Promise<boolean> };
}

/**
 * Does what needs a part of the page that is loaded only then. Where it does not arrive, without a network or after the host has a newer
 * version, that is said once the work is kept, with a way to try again; where it does not then either, since some browsers do not ask twice
 * for what has failed, with a way to reload the page.
 */
export function withPart(page: Page, name: string, work: () => Promise<unknown>, isAgain = false): void {
  work().catch(async (error: unknown) => {
    const isKept = await page.keeper.keep();
    const reload = isKept
      ? 'your work is kept in this browser: reload the page and continue where you left off.'
      : 'save your work as a file and reload the page.';
    const [consequence, remedy] = isAgain
      ? [
          `Part of the page still could not be loaded; the bench is unchanged. Some browsers do not ask twice. Check the network; ${reload}`,
          { label: 'Reload the page', action: () => location.reload() },
        ]
      : [
          `Part of the page could not be loaded; the bench is unchanged. Check the network and try again. If the host has a newer version by now, ${reload}`,
          { label: 'Try again', action: () => withPart(page, name, work, true) },
        ];
    page.messages.problems(`${name} did not open`, [errorText(error)], consequence, remedy);
  });
}
