/**
 * What a page evaluates to run at a tenth of real time, which any computer holds: one that does not goes on with the other engine, whose last
 * digits and whose memory are others.
 */
export const SLOWLY = `{
  const slider = document.querySelector('#bar input[aria-label="Time scale"]');
  slider.value = String(Number(slider.value) - 3);
  slider.dispatchEvent(new Event('input', { bubbles: true }));
}`;
