import { hasDryFriction } from '../../../shared/axis/guide.ts';
import { guidePreloadLeft, nutPreloadLeft, wornParameters } from '../../../shared/axis/wear.ts';
import { grouped, ranged } from '../../../shared/core/format.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { cycleMotion } from '../../../shared/motion/cycleMotion.ts';
import { dutyRows } from '../../../shared/study/dutyRows.ts';

/** What the kilometres mean in years, and what they have done to each part that wears. */
export function wearText(scene: Scene): string {
  const { parameters: p } = scene;
  const parts = [yearsText(scene), p.lead > 0 ? nutText(p) : DIRECT, hasDryFriction(p) ? guideText(p) : AIR];
  return parts.join(' ');
}

const DIRECT = 'No nut: between magnets and coils there is no contact, and the force stays as it was.';
const AIR = 'The guide has no dry friction and does not wear.';

function nutText(p: Scene['parameters']): string {
  const wear = p.nutWear * p.kilometresTravelled;
  const { backlash } = wornParameters(p);
  const play = backlash > 0 ? `lost motion ${ranged(backlash, 'm')}` : 'no lost motion';
  return `Nut: worn by ${ranged(wear, 'm')}, ${percent(nutPreloadLeft(p))} of its preload left, ${play}.`;
}

function guideText(p: Scene['parameters']): string {
  return `Guide: ${percent(guidePreloadLeft(p))} of its preload left.`;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(0)} %`;
}

/** '5000 km are 3.9 years of this program, 8 h on 250 days a year.' */
function yearsText(scene: Scene): string {
  const { kilometresTravelled } = scene.parameters;
  const km = `${grouped(Math.round(kilometresTravelled / 1e3))} km`;
  if (kilometresTravelled === 0) return 'New.';
  const speed = meanSpeed(scene);
  if (speed === 0) return `${km}. The present program stands still.`;
  const [dailyTime, days] = [dutyRows.dailyTime.default, dutyRows.days.default];
  const years = kilometresTravelled / (speed * dailyTime * days);
  return `${km} are ${Number(years.toPrecision(2))} years of this program, ${dailyTime / 3600} h on ${days} days a year.`;
}

/** Distance over time in a cycle of the program, m/s. */
function meanSpeed(scene: Scene): number {
  let [time, distance] = [0, 0];
  for (const { time: each, points } of cycleMotion(scene)) {
    time += each;
    distance += Math.abs(points[2].position - points[0].position);
  }
  return distance / time;
}
