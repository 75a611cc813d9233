import type { ParameterName } from '../core/parameters/table.ts';

/**
 * What a person may type over the values of a preset: what stands on the datasheet of one motor. The rest of a candidate comes from the job,
 * from the preset, or from tuning.
 */
export const DATASHEET_GROUPS = [
  {
    title: 'Winding and force',
    names: [
      'forceConstant',
      'torqueConstant',
      'backEmfConstant',
      'resistance',
      'inductance',
      'polePitch',
      'polePairs',
      'continuousForce',
      'continuousCurrent',
      'peakCurrent',
      'saturationCurrent',
    ],
  },
  { title: 'Mass', names: ['coilMass', 'rotorInertia'] },
  { title: 'Screw', names: ['lead', 'screwRigidity', 'nutRating'] },
  {
    title: 'Ripple, cogging and drag',
    names: [
      'attraction',
      'ripple6',
      'ripple12',
      'cogging1',
      'cogging1Period',
      'cogging2',
      'cogging2Period',
      'cogging3',
      'cogging3Period',
      'eddyDrag',
      'hysteresisDrag',
    ],
  },
  {
    title: 'Heat',
    names: [
      'windingLimit',
      'foldbackTemperature',
      'windingToCarrier',
      'carrierToAir',
      'carrierToCoolant',
      'windingCapacity',
      'carrierCapacity',
      'magnetTempCoefficient',
    ],
  },
] as const satisfies readonly { title: string; names: readonly ParameterName[] }[];

export type DatasheetName = (typeof DATASHEET_GROUPS)[number]['names'][number];

export const DATASHEET_NAMES: readonly DatasheetName[] = DATASHEET_GROUPS.flatMap(({ names }) => names);
