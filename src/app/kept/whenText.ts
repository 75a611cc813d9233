/** As a person says it: the time of a day, and which day if it is not today. */
export function whenText(time: number): string {
  const then = new Date(time);
  const clock = then.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  if (then.toDateString() === new Date().toDateString()) return `${clock} today`;
  return `${then.toLocaleDateString('en-GB', { day: 'numeric', month: 'long' })}, ${clock}`;
}
