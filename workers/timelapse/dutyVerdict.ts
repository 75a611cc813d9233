import { continuousForce } from '../../shared/axis/motor.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { approx, approxRanged, type Sentence, sentence } from '../../shared/core/sentence.ts';
import { durationText } from '../../shared/figures/timeLapseText.ts';
import { tripSentence } from '../../shared/figures/tripText.ts';
import type { Course, DutyVerdict } from '../../shared/protocol/timeLapse.ts';
import { type Cycle, forceFactor } from './cycle.ts';

/** Whether the axis can do its duty, judged by its course and the last cycle of it. */
export function dutyVerdict(p: Parameters, course: Course, last: Cycle | null): DutyVerdict {
  const carrier = course.samples.at(-1)?.carrier ?? p.carrierStart;
  const rmsForce = last?.rmsForce ?? 0;
  const rmsCurrent = last ? last.rmsCurrent / forceFactor(p, last, carrier) : 0;
  const maxForce = continuousForce(p);
  const { trip, hotTime, overloadTime, steady } = course;
  const reasons: Sentence[] = [];
  if (trip) reasons.push(sentence`${when(trip.time)} the drive trips. ${tripSentence(trip)}`);
  if (overloadTime !== null)
    reasons.push(
      sentence`${when(overloadTime)} the overload allowance of the amplifier is used up and its current is
        folded back towards ${approxRanged(p.continuousCurrent, 'A')}.`,
    );
  if (hotTime !== null)
    reasons.push(
      sentence`${when(hotTime)} the winding passes ${approx(p.foldbackTemperature, '°C')},
        where its current is folded back.`,
    );
  if (rmsForce > maxForce)
    reasons.push(
      sentence`The duty takes ${approxRanged(rmsForce, 'N')} RMS, more than the continuous force of
        ${approxRanged(maxForce, 'N')}.`,
    );
  if (last && hotTime === null && trip === null) {
    if (steady === null)
      reasons.push(['In the long run the losses grow faster with temperature than the heat flows off.']);
    else if (steady.windingPeak > p.foldbackTemperature)
      reasons.push(
        sentence`In the long run the winding settles at ${approx(steady.windingPeak, '°C')}, above
          ${approx(p.foldbackTemperature, '°C')}, where its current is folded back.`,
      );
  }
  return {
    canDo: reasons.length === 0,
    reasons,
    rmsForce,
    continuousForce: maxForce,
    rmsCurrent,
    continuousCurrent: p.continuousCurrent,
  };
}

function when(time: number): string {
  return time > 0 ? `After ${durationText(time)}` : 'In the first cycle';
}
