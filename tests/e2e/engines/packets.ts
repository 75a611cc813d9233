/** A message of Marionette, the remote control that Firefox has built in: its length in bytes, a colon, JSON. */
export function packet(message: unknown): Buffer {
  const body = Buffer.from(JSON.stringify(message));
  return Buffer.concat([Buffer.from(`${body.length}:`), body]);
}

/** The whole messages at the start of what has arrived, and what is left of the next one. */
export function unpack(arrived: Buffer): { messages: unknown[]; rest: Buffer } {
  const messages: unknown[] = [];
  let rest = arrived;
  for (;;) {
    const colon = rest.indexOf(':');
    const end = colon + 1 + Number(rest.subarray(0, Math.max(colon, 0)).toString());
    if (colon < 0 || rest.length < end) return { messages, rest };
    messages.push(JSON.parse(rest.subarray(colon + 1, end).toString()));
    rest = rest.subarray(end);
  }
}
