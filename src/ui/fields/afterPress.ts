/**
 * A field hears of its change when it loses the focus, which is when the pointer goes down on something else. If the page moved then, the
 * pointer would come up beside what it was meant for and the click be lost. So what may move the page waits for the pointer to come up;
 * the click that follows already finds the change made.
 */
let isPressed = false;
let isWatching = false;
const waiting: (() => void)[] = [];

/** Does it at once, or when the pointer comes up. */
export function afterPress(action: () => void): void {
  if (isPressed) waiting.push(action);
  else action();
}

/** To be called before the first press that counts. */
export function watchPresses(): void {
  if (isWatching) return;
  isWatching = true;
  document.addEventListener(
    'pointerdown',
    () => {
      isPressed = true;
    },
    true,
  );
  document.addEventListener('pointerup', release, true);
  document.addEventListener('pointercancel', release, true);
}

function release(): void {
  isPressed = false;
  for (const action of waiting.splice(0)) action();
}
