import { errorText } from '../clients/errorText.ts';
import type { Messages } from '../ui/messages.ts';

/**
 * Does what needs a part of the page that is loaded only then. Where it does not arrive, without a network or after the host has a newer
 * version, that is said, with a way to try again.
 */
export function withPart(messages: Messages, name: string, work: () => Promise<unknown>): void {
  work().catch((error: unknown) => {
    messages.problems(
      `${name} did not open`,
      [errorText(error)],
      'A part of the page did not arrive; the bench is as it was. Check the network and try again. If the host has a newer version by now, save your work and reload the page.',
      { label: 'Try again', action: () => withPart(messages, name, work) },
    );
  });
}
