import type { Page, Route } from 'playwright-core';

/** What can go wrong with a worker: it gets stuck, it is gone, it throws. */
export type Fault = 'hangs' | 'is killed' | 'throws';

export const FAULTS: readonly Fault[] = ['hangs', 'is killed', 'throws'];

const CODE: Readonly<Record<Fault, string>> = {
  hangs: 'for (;;);',
  'is killed': 'self.close();',
  throws: 'setTimeout(() => { throw new Error("injected"); });',
};

/** The reason that the page gives. */
export const REASONS: Readonly<Record<Fault, RegExp>> = {
  hangs: /it no longer responds\./,
  'is killed': /it no longer responds\./,
  throws: /injected/,
};

/** In the middle of a long computation: after its fourth message. */
const BY_COUNT = (code: string) => `{
  const post = self.postMessage.bind(self);
  let left = 4;
  self.postMessage = (...values) => { post(...values); if (--left === 0) { ${code} } };
}`;

const CHANNEL = 'fault';

/** When the test says so: for a worker that looks at its messages. */
const BY_SIGNAL = (code: string) => `{
  const channel = new BroadcastChannel('${CHANNEL}');
  channel.onmessage = () => { channel.close(); ${code} };
}`;

/**
 * From now on the workers of a script, as 'pretuneWorker', have a fault in the middle of their work, or once `strike` is called. Nothing
 * of it is in the page that ships. Returns what ends that for workers that are started later.
 */
export async function breakWorkers(
  page: Page,
  script: string,
  fault: Fault,
  when: 'by itself' | 'by signal' = 'by itself',
): Promise<() => Promise<void>> {
  const pattern = new RegExp(`${script}[^/]*\\.js`);
  const injected = (when === 'by signal' ? BY_SIGNAL : BY_COUNT)(CODE[fault]);
  const underWay = new Set<Promise<void>>();
  const inject = async (route: Route) => {
    // A connection that was just closed by the server is no fault of the page.
    const response = await route.fetch({ maxRetries: 5 });
    await route.fulfill({ response, body: `${injected}\n${await response.text()}` });
  };
  await page.route(pattern, async (route) => {
    const injecting = inject(route);
    underWay.add(injecting);
    await injecting.finally(() => underWay.delete(injecting));
  });
  return async () => {
    // A script on its way is no longer asked about once nobody looks for it.
    await Promise.allSettled(underWay);
    await page.unroute(pattern);
  };
}

/** Lets the fault happen in the workers that wait for a signal. */
export async function strike(page: Page): Promise<void> {
  await page.evaluate((name) => {
    const channel = new BroadcastChannel(name);
    channel.postMessage(null);
    channel.close();
  }, CHANNEL);
}
