import type { Messages } from './messages.ts';

/** Puts a fragment into the address of the page, and the address on the clipboard; says `copied`, or where to find the link. */
export async function copyLink(fragment: string, messages: Messages, copied: string): Promise<void> {
  history.replaceState(null, '', `#${fragment}`);
  try {
    await navigator.clipboard.writeText(location.href);
    messages.note(copied);
  } catch {
    messages.note('The link is in the address bar; copy it from there.');
  }
}
