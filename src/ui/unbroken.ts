/** A sentence whose numbers stay on one line with their units. */
export function unbroken(text: string): string {
  return text.replace(/(?<=\d) (?=\S)/g, '\u00a0');
}
