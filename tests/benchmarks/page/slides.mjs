/** Runs in the page before its own scripts: counts refreshes, and notes when changes go out and frames come in. */
export function watchFrames() {
  const seen = { refresh: 0, isRefreshing: false, changeAt: null, askedAfterChange: false, drawnAt: null };
  globalThis.seen = seen;
  // Comes as soon as the refresh is over.
  const over = new MessageChannel();
  over.port1.addEventListener('message', () => {
    seen.isRefreshing = false;
  });
  over.port1.start();
  const tick = () => {
    seen.refresh++;
    seen.isRefreshing = true;
    over.port2.postMessage(null);
    requestAnimationFrame(tick);
  };
  requestAnimationFrame(tick);

  const post = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (message, ...rest) {
    if (message?.path?.[0] === 'change') seen.changeAt ??= seen.refresh;
    return post.call(this, message, ...rest);
  };
  const ask = MessagePort.prototype.postMessage;
  MessagePort.prototype.postMessage = function (message, ...rest) {
    if (message && 'bins' in message && seen.changeAt !== null) seen.askedAfterChange = true;
    return ask.call(this, message, ...rest);
  };
  const { set } = Object.getOwnPropertyDescriptor(MessagePort.prototype, 'onmessage');
  Object.defineProperty(MessagePort.prototype, 'onmessage', {
    set(listener) {
      set.call(this, (event) => {
        if (seen.askedAfterChange && event.data?.status) seen.arrived = true;
        listener(event);
      });
    },
  });
  const clear = CanvasRenderingContext2D.prototype.clearRect;
  CanvasRenderingContext2D.prototype.clearRect = function (...box) {
    // What is drawn between two refreshes is seen with the next.
    if (seen.arrived && this.canvas.className === 'charts-canvas')
      seen.drawnAt ??= seen.refresh + (seen.isRefreshing ? 0 : 1);
    return clear.apply(this, box);
  };
}

/**
 * Runs in the page: moves the slider of the damping gain to and fro and waits for the chart each time. Returns, for each slide, the
 * display refreshes from the slider's input to the chart that is drawn with what the axis did under it: the page sends the change, the
 * next frame asked for after that holds its effect, is drawn on arrival and seen with the refresh after it.
 */
export async function slide(times) {
  const { seen } = globalThis;
  const refreshed = () => new Promise((done) => requestAnimationFrame(done));
  const slider = document.querySelector('#field-Kd').closest('.field').querySelector('input[type=range]');
  const start = Number(slider.value);
  const latencies = [];
  for (let i = 0; i < times; i++) {
    Object.assign(seen, { changeAt: null, askedAfterChange: false, arrived: false, drawnAt: null });
    const at = seen.refresh;
    slider.value = String(start + (i % 2 ? 0 : 10));
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    while (seen.drawnAt === null) await refreshed();
    latencies.push(seen.drawnAt - at);
  }
  return latencies;
}
