import { ranged } from '../../../shared/core/format.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import type { Sizing, SizingFigure } from '../../../shared/sizing/sizing.ts';
import type { SampleDrive } from './sampleDrives.ts';

/** A sizing with the two figures that every drive has, and an envelope of straight lines. */
export function sampleSizing({ parameters: p }: Scene, drive: SampleDrive): Sizing {
  const continuous = p.motorCount * p.continuousForce;
  const figure = (id: string, label: string, symbol: string, value: number, max: number): SizingFigure => ({
    id,
    label,
    symbol,
    value,
    unit: 'N',
    formula: `${symbol} = m a + F_r`,
    numbers: `${symbol} = ${ranged(value, 'N')}`,
    limit: { value: max, side: 'most' },
    standing: value > max ? 'beyond' : value > 0.8 * max ? 'close' : 'good',
    note: 'Rigid body.',
  });
  const figures = [
    figure('rmsForce', 'RMS force', 'F_rms', drive.rmsForce, continuous),
    figure('peakForce', 'Peak force', 'F_pk', drive.peakForce, 3 * continuous),
  ];
  const speed = Array.from({ length: 41 }, (_, k) => (k / 40) * p.speed * 2);
  return {
    figures,
    envelope: {
      speed,
      continuous: speed.map((v) => continuous * (1 - v / speed.at(-1)! / 4)),
      peak: speed.map((v) => 3 * continuous * (1 - v / speed.at(-1)! / 3)),
      trajectory: Array.from({ length: 61 }, (_, k) => ({
        speed: p.speed * Math.min(1, 3 * Math.min(k / 60, 1 - k / 60)),
        force: k < 20 || k > 40 ? drive.peakForce : 0.1 * drive.peakForce,
      })),
      rms: { speed: 0.6 * p.speed, force: drive.rmsForce },
    },
    passes: figures.every(({ standing }) => standing !== 'beyond'),
    reasons: [],
  };
}
