import { dryMotorDrag } from '../../../shared/axis/drag.ts';
import { hasDryFriction, slidingFriction } from '../../../shared/axis/guide.ts';
import { guidePreloadLeft, nutPreloadLeft, wornParameters } from '../../../shared/axis/wear.ts';
import { grouped, ranged } from '../../../shared/core/format.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { cycleMotion } from '../../../shared/motion/cycleMotion.ts';
import type { PositioningTest } from '../../../shared/protocol/accuracy.ts';
import { defaultJobValues } from '../../../shared/study/job.ts';

/** A figure counts as changed from this share on: a repeated test moves by less, because friction is never quite the same. */
const CHANGED = 0.1;

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
  const { dailyTime, days } = defaultJobValues();
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

/** What the kilometres did to the two figures that show lost motion. */
export function changeText(fresh: PositioningTest, worn: PositioningTest): string {
  const figure = (label: string, before: number, now: number) => {
    const change = now / before - 1;
    if (!(Math.abs(change) > CHANGED)) return `${label} stays at ${ranged(before, 'm')}`;
    return `${label} ${change > 0 ? 'grows' : 'falls'} from ${ranged(before, 'm')} to ${ranged(now, 'm')}`;
  };
  const reversal = figure('The reversal error', fresh.figures.reversal, worn.figures.reversal);
  const repeatability = figure(
    'the bidirectional repeatability',
    fresh.figures.repeatability,
    worn.figures.repeatability,
  );
  return `${reversal}, ${repeatability}.`;
}

/**
 * Why a worn machine reverses better than the new one, where it does: what friction it has lost counts for more than what lost motion it
 * has gained. Empty where it does not, or where its friction has not fallen.
 */
export function frictionText(p: Scene['parameters'], fresh: PositioningTest, worn: PositioningTest): string {
  const [before, now] = [fresh.figures.reversal, worn.figures.reversal];
  const after = wornParameters(p);
  const [most, left] = [dryFriction(p), dryFriction(after)];
  if (!(now / before - 1 < -CHANGED && left < most)) return '';
  const gained = after.backlash - p.backlash;
  const instead = gained > 0 ? `, and falls by more than ${ranged(gained, 'm')} of new lost motion adds` : '';
  return (
    `The reversal error falls because friction does, from ${ranged(most, 'N')} to ${ranged(left, 'N')} as preload is lost${instead}: ` +
    `with these gains at least ${ranged(before - now, 'm')} of it was friction when the machine was new. ` +
    'Preload that is lost takes stiffness with it, which the model leaves out: this is no better machine.'
  );
}

/** Of guide, nut and iron while the table slides, N. */
function dryFriction(p: Scene['parameters']): number {
  return slidingFriction(p) + dryMotorDrag(p);
}
