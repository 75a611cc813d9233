import type { Unit } from './units.ts';

/** A quantity has one colour and one manner of scaling everywhere: stage, charts, gauges, report. */
export type Quantity =
  | 'setpoint'
  | 'position'
  | 'error'
  | 'speed'
  | 'force'
  | 'current'
  | 'voltage'
  | 'heat'
  | 'energy';

interface Channel {
  readonly label: string;
  readonly unit: Unit;
  readonly quantity: Quantity;
}

/**
 * Everything that is recorded, at every current-loop period, in the order of the telemetry frame.
 * Forces that drive are positive towards +x; cogging, guide friction and drag are shown as loads, positive when they resist motion towards +x.
 */
export const CHANNELS = {
  time: { label: 'Time', unit: 's', quantity: 'setpoint' },
  setpoint: { label: 'Setpoint', unit: 'mm', quantity: 'setpoint' },
  setSpeed: { label: 'Set speed', unit: 'm/s', quantity: 'setpoint' },
  setAcceleration: { label: 'Set acceleration', unit: 'm/s²', quantity: 'setpoint' },
  motorPosition: { label: 'Motor position', unit: 'mm', quantity: 'position' },
  motorSpeed: { label: 'Motor speed', unit: 'm/s', quantity: 'speed' },
  tablePosition: { label: 'Table position', unit: 'mm', quantity: 'position' },
  tableSpeed: { label: 'Table speed', unit: 'm/s', quantity: 'speed' },
  encoderPosition: { label: 'Encoder reading', unit: 'mm', quantity: 'position' },
  followingError: { label: 'Following error at the encoder', unit: 'µm', quantity: 'error' },
  toolError: { label: 'Position error at the tool', unit: 'µm', quantity: 'error' },
  currentCommand: { label: 'Current command', unit: 'A', quantity: 'current' },
  forceCurrent: { label: 'Force current i_q', unit: 'A', quantity: 'current' },
  fieldCurrent: { label: 'Field current i_d', unit: 'A', quantity: 'current' },
  circulatingCurrent: { label: 'Circulating current', unit: 'A', quantity: 'current' },
  currentLimit: { label: 'Current limit', unit: 'A', quantity: 'current' },
  voltage: { label: 'Voltage amplitude', unit: 'V', quantity: 'voltage' },
  motorForce: { label: 'Motor force', unit: 'N', quantity: 'force' },
  coggingForce: { label: 'Cogging', unit: 'N', quantity: 'force' },
  guideForce: { label: 'Guide friction', unit: 'N', quantity: 'force' },
  dragForce: { label: 'Iron and nut drag', unit: 'N', quantity: 'force' },
  processForce: { label: 'Process force', unit: 'N', quantity: 'force' },
  handForce: { label: 'Hand force', unit: 'N', quantity: 'force' },
  windingTemperature: { label: 'Winding', unit: '°C', quantity: 'heat' },
  carrierTemperature: { label: 'Carrier', unit: '°C', quantity: 'heat' },
  tableTemperature: { label: 'Table', unit: '°C', quantity: 'heat' },
  screwTemperature: { label: 'Screw', unit: '°C', quantity: 'heat' },
  basePosition: { label: 'Base position', unit: 'µm', quantity: 'position' },
  electricPower: { label: 'Electrical power', unit: 'W', quantity: 'energy' },
  energyResidual: { label: 'Energy residual over throughput', unit: '', quantity: 'energy' },
} as const satisfies Record<string, Channel>;

export type ChannelName = keyof typeof CHANNELS;

export const CHANNEL_NAMES = Object.keys(CHANNELS) as ChannelName[];
export const CHANNEL_COUNT = CHANNEL_NAMES.length;

/** Column of each channel in a telemetry record. */
export const CHANNEL_INDEX = Object.fromEntries(CHANNEL_NAMES.map((name, i) => [name, i])) as Record<
  ChannelName,
  number
>;
