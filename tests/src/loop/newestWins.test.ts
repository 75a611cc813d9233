import { describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { NewestWins } from '../../../src/loop/newestWins.ts';

/** Work that ends when the test says so. */
function bench() {
  const begun: { readonly input: number; end(output: string): void; fail(): void }[] = [];
  const [done, failed]: [string[], number[]] = [[], []];
  const queue = new NewestWins<number, string>(
    (input) =>
      new Promise((resolve, reject) =>
        begun.push({ input, end: resolve, fail: () => reject(new Error('no')) }),
      ),
    (output, input) => done.push(`${output} of ${input}`),
    (_, input) => failed.push(input),
  );
  return { begun, done, failed, queue };
}

/** All that is settled by now has been heard of. */
const settled = () => new Promise((resolve) => setImmediate(resolve));

describe('newest wins', () => {
  it('begins at once when nothing is under way', async () => {
    const { begun, done, queue } = bench();
    queue.ask(1);
    expect(begun.map(({ input }) => input)).toEqual([1]);
    at(begun, 0).end('loop');
    await settled();
    expect(done).toEqual(['loop of 1']);
    expect(queue.busy).toBe(false);
  });

  it('keeps one piece under way and only the newest of those that wait', async () => {
    const { begun, done, queue } = bench();
    for (const input of [1, 2, 3, 4]) queue.ask(input);
    expect(begun).toHaveLength(1);
    at(begun, 0).end('loop');
    await settled();
    expect(begun.map(({ input }) => input)).toEqual([1, 4]);
    at(begun, 1).end('loop');
    await settled();
    expect(done).toEqual(['loop of 1', 'loop of 4']);
  });

  it('sends the next piece off before it hands over the answer', async () => {
    const order: string[] = [];
    const queue = new NewestWins<number, number>(
      async (input) => {
        order.push(`begin ${input}`);
        return input;
      },
      (output) => order.push(`done ${output}`),
      () => {},
    );
    queue.ask(1);
    queue.ask(2);
    await settled();
    expect(order).toEqual(['begin 1', 'begin 2', 'done 1', 'done 2']);
  });

  it('goes on after a failure', async () => {
    const { begun, done, failed, queue } = bench();
    queue.ask(1);
    queue.ask(2);
    at(begun, 0).fail();
    await settled();
    expect(failed).toEqual([1]);
    at(begun, 1).end('loop');
    await settled();
    expect(done).toEqual(['loop of 2']);
  });
});
