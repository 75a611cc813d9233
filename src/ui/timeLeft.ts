/** How long the rest takes at the pace so far: 'about 40 s left'. */
export function timeLeftText(done: number, total: number, elapsed: number): string {
  if (done <= 0) return 'time left not known yet';
  const left = (elapsed * (total - done)) / done;
  return left < 90 ? `about ${Math.ceil(left)} s left` : `about ${Math.ceil(left / 60)} min left`;
}
