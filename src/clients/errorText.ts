/** What a caught error says of itself. */
export function errorText(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
