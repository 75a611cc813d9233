/*
 * Long computations give a sign of life wherever they come by often, so that who waits for them can tell slow from stuck.
 * Without a listener it is nothing. It has no part in any result.
 */

let listener: () => void = () => {};

/** The one listener of this thread; the one before it hears nothing any more. */
export function onSignOfLife(heard: () => void): void {
  listener = heard;
}

/** To be called many times a second by whatever computes for long. */
export function signOfLife(): void {
  listener();
}
