import { expect, it } from 'vitest';
import { packet, unpack } from './packets.ts';

it('reads messages of the other engine however they are cut on their way', () => {
  const messages = [
    [1, 1, null, { value: '7.76 µm' }],
    [1, 2, { message: 'no such: element' }, null],
  ];
  const sent = Buffer.concat(messages.map(packet));
  for (let cut = 0; cut <= sent.length; cut++) {
    const first = unpack(sent.subarray(0, cut));
    const second = unpack(Buffer.concat([first.rest, sent.subarray(cut)]));
    expect([...first.messages, ...second.messages]).toEqual(messages);
    expect(second.rest).toHaveLength(0);
  }
});
