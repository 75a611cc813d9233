import type { Parameters } from '../../shared/core/parameters/table.ts';
import { scaleStrain } from '../model/growth.ts';
import { NormalNoise } from './noise.ts';

/*
 * What the loop can see of a position u (m):
 *
 *   x_m = q round((u' + a1 sin(2πu'/p) + a2 sin(4πu'/p) + noise)/q),   u' = u (1 − α_s (T_scale − T_a))
 *
 * q 0 is not rounded. One noise number per reading, drawn even when its rms is 0, so that switching noise on and off
 * leaves the sequence alone.
 */
export class Encoder {
  private readonly noise: NormalNoise;

  constructor(seed: number) {
    this.noise = new NormalNoise(seed);
  }

  read(u: number, p: Parameters, scaleTemperature: number): number {
    const scaled = u * (1 - scaleStrain(p, scaleTemperature));
    const phase = (2 * Math.PI * scaled) / p.signalPeriod;
    const reading =
      scaled +
      p.interpolation1 * Math.sin(phase) +
      p.interpolation2 * Math.sin(2 * phase) +
      p.encoderNoise * this.noise.next();
    return p.encoderResolution > 0
      ? p.encoderResolution * Math.round(reading / p.encoderResolution)
      : reading;
  }
}
