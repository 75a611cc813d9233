import type { Messages } from '../ui/messages.ts';

/** Whether this is a built page; while it is worked on, nothing is kept. */
declare const __IS_BUILT__: boolean;

/**
 * Has the built page kept in the browser, so that it works without its host, and offers a newer build when there is one. `keep` keeps the
 * work of this page before it is opened anew. A browser that refuses leaves the page as it is: it then needs its host.
 */
export async function keepOffline(messages: Messages, keep: () => Promise<boolean>): Promise<void> {
  if (!__IS_BUILT__ || !('serviceWorker' in navigator)) return;
  const { serviceWorker } = navigator;
  const registration = await serviceWorker.register('./offlineWorker.js').catch(() => null);
  if (!registration) return;
  const offer = (worker: ServiceWorker) =>
    messages.offer(
      'Newer version',
      'A newer version of Waybench is ready. Your work is kept in this browser and will be offered again when the page reopens.',
      [
        { label: 'Use it now', action: () => void change(worker) },
        { label: 'Later', action: () => {} },
      ],
    );
  const change = async (worker: ServiceWorker) => {
    if (!(await keep())) {
      messages.note(
        'This page cannot keep your work in the browser: save it as a file, then close all tabs of the page.',
      );
      return;
    }
    serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
    worker.postMessage('use now');
  };
  // The browser asks the host whenever the page is opened; a page that stays open asks when a person comes back to it.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') void registration.update().catch(() => {});
  });
  if (registration.waiting) offer(registration.waiting);
  registration.addEventListener('updatefound', () => {
    const worker = registration.installing;
    const isFirst = !serviceWorker.controller;
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' && !isFirst) offer(worker);
      if (worker.state === 'activated' && isFirst)
        messages.note('This page now also opens without a network.');
    });
  });
}
