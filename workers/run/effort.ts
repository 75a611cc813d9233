/** What one period asks of motor and amplifier. One object, filled anew each time. */
export interface Effort {
  /** Of all motors, N. */
  force: number;
  /** Summed over the motors, A. */
  forceCurrent: number;
  /** Amplitudes of the summed currents, A, and of the voltage, V. */
  current: number;
  voltage: number;
  /** Commanded current as a share of its limit of the moment, and voltage of what the bus gives. */
  currentUse: number;
  voltageUse: number;
}
