import { PRESETS } from '../../../scenes/index.ts';
import type { AxisStatus } from '../../../shared/protocol/axis.ts';
import type { Bench } from '../../bench/bench.ts';
import { fallsBehind, measuredTimeScaleText, timeScaleText } from '../../ui/transport/timeScale.ts';
import type { CaptionLine } from '../still.ts';

/** What is written below a picture of the stage: scene and drive, simulated time and pace. */
export function stageLine({ origin: { title, preset } }: Bench, status: AxisStatus | null): CaptionLine {
  const drive = PRESETS[preset ?? '']?.title;
  return [drive ? `${title}: ${drive}` : title, status ? timeText(status) : ''];
}

type Timing = Pick<AxisStatus, 'time' | 'state' | 'timeScale' | 'achievedTimeScale' | 'lostTime' | 'isSlow'>;

/** Simulated time and pace: '1.250 s, 1/10 real time'. */
export function timeText({ time, state, timeScale, achievedTimeScale, lostTime, isSlow }: Timing): string {
  const text = `${time.toFixed(3)} s`;
  if (state !== 'running') return `${text}, ${state}`;
  const isMeasured =
    isSlow || timeScale === Number.POSITIVE_INFINITY || fallsBehind(timeScale, achievedTimeScale, lostTime);
  return `${text}, ${isMeasured ? measuredTimeScaleText(achievedTimeScale) : timeScaleText(timeScale)}`;
}
