/** Names of the two marks in the trace between which the slider is dragged. */
const [BEGIN, END] = ['drag begins', 'drag ends'];
/** Shorter tasks are not a refresh: between them, the browser keeps its books. */
const REFRESH = 10;

/**
 * Drags a gain for some seconds while the axis runs, a little with every display refresh, and traces the main thread. Of its tasks, that
 * is of unbroken stretches of work, in ms of the processor, which other programs on the machine hardly lengthen: the longest, the one in the
 * middle of those that drew a refresh, and how many were longer than 50 ms; `longestWaited` by the clock.
 *
 * @param {import('playwright-core').Page} page
 * @param {number} seconds
 */
export async function dragTasks(page, seconds) {
  const browser = page.context().browser();
  await browser.startTracing(page, { categories: ['toplevel', 'blink.user_timing'] });
  await page.evaluate(drag, { seconds, marks: [BEGIN, END] });
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString());
  const begin = traceEvents.find(({ name }) => name === BEGIN);
  const end = traceEvents.find(({ name }) => name === END);
  const tasks = traceEvents.filter(
    ({ pid, tid, name, ts, tdur }) =>
      pid === begin.pid &&
      tid === begin.tid &&
      name === 'ThreadControllerImpl::RunTask' &&
      ts > begin.ts &&
      ts < end.ts &&
      tdur !== undefined,
  );
  const sorted = tasks.map(({ tdur }) => tdur / 1000).sort((a, b) => b - a);
  const refreshes = sorted.filter((ms) => ms > REFRESH);
  return {
    longest: sorted[0],
    median: refreshes[refreshes.length >> 1] ?? sorted[0],
    above50: sorted.filter((ms) => ms > 50).length,
    refreshes: refreshes.length,
    longestWaited: Math.max(...tasks.map(({ dur }) => dur / 1000)),
  };
}

/** Runs in the page. */
async function drag({ seconds, marks: [begin, end] }) {
  const refreshed = () => new Promise((done) => requestAnimationFrame(done));
  const slider = document.querySelector('#field-Kd').closest('.field').querySelector('input[type=range]');
  const start = Number(slider.value);
  const until = performance.now() + 1000 * seconds;
  performance.mark(begin);
  for (let i = 0; performance.now() < until; i++) {
    slider.value = String(start + 20 * Math.sin(i / 10));
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    await refreshed();
  }
  performance.mark(end);
}
