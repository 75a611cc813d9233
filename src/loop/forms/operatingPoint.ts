import { windingToAmbientResistance } from '../../../shared/axis/motor.ts';
import { valueAt } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import { checkNumber } from '../../../shared/core/check.ts';
import { ranged } from '../../../shared/core/format.ts';
import { choice, linear, type NumberRow } from '../../../shared/core/parameters/row.ts';
import { PARAMETERS, type Parameters } from '../../../shared/core/parameters/table.ts';
import type { OperatingPoint } from '../../../shared/protocol/analysis.ts';

/** Where a person wants the loop to be looked at. */
export interface PointRequest {
  /** Of the table, m; null: present position while the run is paused, else at the start of the scene. */
  readonly position: number | null;
  /** Of the table, m/s. */
  readonly speed: number;
  readonly temperature: 'as started' | 'as now' | 'winding at its limit';
  readonly friction: OperatingPoint['friction'];
}

/** Sliding is what a move sees, and what gains are usually made for. */
export const FIRST_REQUEST: PointRequest = {
  position: null,
  speed: 0,
  temperature: 'as started',
  friction: 'sliding',
};

export const TEMPERATURE = choice(
  '',
  ['as started', 'as now', 'winding at its limit'],
  'as started',
  'Temperature of the axis',
);
export const FRICTION = choice('', ['sliding', 'presliding'], 'sliding', 'Guide sticking or sliding');
export const SPEED = linear('', 'mm/s', [-5, 5], 0, 'Speed of the table');

/** The wish that was kept, as far as its entries can be used; the first one has the rest. */
export function requestOf(kept: Partial<Record<keyof PointRequest, unknown>>): PointRequest {
  const among = <T>(options: readonly T[], value: unknown, otherwise: T) =>
    options.find((option) => option === value) ?? otherwise;
  const number = (value: unknown, row: NumberRow) => {
    const checked = checkNumber(value, row);
    return 'legal' in checked ? checked.legal : null;
  };
  return {
    position: number(kept.position, PARAMETERS.start),
    speed: number(kept.speed, SPEED) ?? FIRST_REQUEST.speed,
    temperature: among(TEMPERATURE.options, kept.temperature, FIRST_REQUEST.temperature),
    friction: among(FRICTION.options, kept.friction, FIRST_REQUEST.friction),
  };
}

/** A table counts as standing below this, m/s, and its place and warmth as changed by more than this, m and K. */
const STANDING = 1e-5;
const SAME_PLACE = 1e-5;
const SAME_WARMTH = 1;

/** The operating point of a wish, with the newest value of each channel, or null before there is one. */
export function pointOf(
  request: PointRequest,
  p: Parameters,
  now: Float64Array | null,
  paused: boolean,
): OperatingPoint {
  const friction = request.speed === 0 ? request.friction : 'sliding';
  const standing = now !== null && paused && Math.abs(valueAt(now, C.tableSpeed)) < STANDING;
  const present = standing ? Math.round(valueAt(now, C.tablePosition) / SAME_PLACE) * SAME_PLACE : p.start;
  const position = Math.min(Math.max(request.position ?? present, p.travelMin), p.travelMax);
  return {
    position,
    speed: request.speed,
    loadForce: 0,
    friction,
    ...temperatures(request.temperature, p, now),
  };
}

type Temperatures = Pick<
  OperatingPoint,
  'windingTemperature' | 'carrierTemperature' | 'tableTemperature' | 'screwTemperature'
>;

function temperatures(
  which: PointRequest['temperature'],
  p: Parameters,
  now: Float64Array | null,
): Temperatures {
  if (which === 'as now' && now !== null) {
    const whole = (value: number) => Math.round(value / SAME_WARMTH) * SAME_WARMTH;
    return {
      windingTemperature: whole(valueAt(now, C.windingTemperature)),
      carrierTemperature: whole(valueAt(now, C.carrierTemperature)),
      tableTemperature: whole(valueAt(now, C.tableTemperature)),
      screwTemperature: whole(valueAt(now, C.screwTemperature)),
    };
  }
  if (which === 'winding at its limit') return steadyAtLimit(p);
  return {
    windingTemperature: p.windingStart,
    carrierTemperature: p.carrierStart,
    tableTemperature: p.ambient,
    screwTemperature: p.ambient,
  };
}

/** The steady state of the heat paths with the winding at its limit: what flows out of it warms carrier and table on its way. */
function steadyAtLimit(p: Parameters): Temperatures {
  const flow = (p.windingLimit - p.ambient) / windingToAmbientResistance(p);
  const carrier = p.windingLimit - flow / p.windingToCarrier;
  const share = p.carrierToTable / (p.carrierToTable + p.tableToAir);
  return {
    windingTemperature: p.windingLimit,
    carrierTemperature: carrier,
    tableTemperature: p.ambient + share * (carrier - p.ambient),
    screwTemperature: p.ambient,
  };
}

export function samePoint(a: OperatingPoint, b: OperatingPoint): boolean {
  return (Object.keys(a) as (keyof OperatingPoint)[]).every((name) => a[name] === b[name]);
}

/** A point in a few words: 'at −100 mm, standing, sliding friction, winding 22.0 °C'. */
export function pointText({ position, speed, friction, windingTemperature }: OperatingPoint): string {
  const motion = speed === 0 ? 'standing' : `at ${ranged(speed, 'm/s')}`;
  return `Table at ${ranged(position, 'm')}, ${motion}, friction ${friction}, winding at ${ranged(windingTemperature, '°C')}`;
}
