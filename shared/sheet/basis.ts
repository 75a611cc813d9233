import { continuousForce, motorConstants } from '../axis/motor.ts';
import { positionRate } from '../core/crossChecks.ts';
import type { Parameters } from '../core/parameters/table.ts';
import { type Factor, factor } from './factor.ts';

/** The quantities that scale the gains, each with its symbol. */
export interface Basis {
  /** Force of all motors together per ampere of their summed current, amplitude and RMS, at 20 °C. */
  readonly forcePerAmp: Factor;
  readonly forcePerAmpRms: Factor;
  readonly peakCurrent: Factor;
  /** Of all motors together. */
  readonly continuousForce: Factor;
  /** One encoder count in travel of the table; null where the encoder is not rounded to counts. */
  readonly count: Factor | null;
  /** Rates and periods of the two loops. */
  readonly positionRate: Factor;
  readonly positionPeriod: Factor;
  readonly currentRate: Factor;
  readonly currentPeriod: Factor;
}

export function basisOf(p: Parameters): Basis {
  const motor = motorConstants(p);
  return {
    forcePerAmp: factor('K_f,pk', motor.forcePerAmp, 'N/A peak'),
    forcePerAmpRms: factor('K_f', motor.forcePerAmpRms, 'N/A RMS'),
    peakCurrent: factor('i_pk', p.peakCurrent, 'A peak'),
    continuousForce: factor('F_c', continuousForce(p), 'N'),
    count: p.encoderResolution > 0 ? factor('q', p.encoderResolution, 'm') : null,
    positionRate: factor('f_p', positionRate(p), 'Hz'),
    positionPeriod: factor('T_p', p.positionDivider / p.currentRate, 's'),
    currentRate: factor('f_c', p.currentRate, 'Hz'),
    currentPeriod: factor('T_s', 1 / p.currentRate, 's'),
  };
}
