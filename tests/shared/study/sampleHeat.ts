import type {
  CoolingVerdict,
  Course,
  HeatState,
  LapseSample,
  TimeLapse,
} from '../../../shared/protocol/timeLapse.ts';
import type { JobValues } from '../../../shared/study/job.ts';
import type { SampleDrive } from './sampleDrives.ts';

const HOURS = 8;
const SAMPLE_EVERY = 60;

/** A day of heat as two exponentials: plausible, cheap, and the same every time. */
export function sampleHeat(title: string, drive: SampleDrive, job: JobValues, cycleTime: number): TimeLapse {
  const inAir = course(drive, job, cycleTime, false);
  const cooled = course(drive, job, cycleTime, true);
  const [asSet, switched] = job.cooling ? [cooled, inAir] : [inAir, cooled];
  return {
    title,
    hours: HOURS,
    cycleTime,
    measurements: 3,
    asSet,
    switched,
    duty: {
      canDo: true,
      reasons: [],
      rmsForce: drive.rmsForce,
      continuousForce: 300,
      rmsCurrent: drive.rmsCurrent,
      continuousCurrent: 7.5,
    },
    cooling: verdict(inAir.steady!, job),
  };
}

function course(drive: SampleDrive, job: JobValues, cycleTime: number, cooling: boolean): Course {
  const count = (HOURS * 3600) / SAMPLE_EVERY;
  const samples = Array.from(
    { length: count + 1 },
    (_, k): LapseSample => ({
      time: k * SAMPLE_EVERY,
      ...heatState(
        drive,
        job,
        cycleTime,
        cooling,
        risen(k * SAMPLE_EVERY, drive.carrierTime),
        risen(k * SAMPLE_EVERY, drive.slowTime),
      ),
    }),
  );
  const steady = heatState(drive, job, cycleTime, cooling, 1, 1);
  return { cooling, samples, trip: null, hotTime: null, overloadTime: null, steady };
}

function risen(time: number, constant: number): number {
  return 1 - Math.exp(-time / constant);
}

function heatState(
  drive: SampleDrive,
  { ambient }: JobValues,
  cycleTime: number,
  cooling: boolean,
  quick: number,
  slow: number,
): HeatState {
  const { rise, cooledShare, energy } = drive;
  const share = cooling ? cooledShare : 1;
  const winding = ambient + share * rise.winding * (0.4 * quick + 0.6 * slow);
  const carrier = ambient + share * rise.carrier * quick;
  const table = ambient + (0.3 + 0.7 * share) * rise.table * slow;
  const screw = ambient + rise.screw * slow;
  const copper = (energy.copper / cycleTime) * (1 + 0.004 * (winding - ambient));
  const [iron, guide, nut] = [energy.iron, energy.guide, energy.nut].map((joules) => joules / cycleTime) as [
    number,
    number,
    number,
  ];
  return {
    winding,
    carrier,
    table,
    screw,
    windingPeak: winding + 0.06,
    forcePerAmp: 1 - drive.fluxLoss * (carrier - ambient),
    growth: drive.growthOfTable * (table - ambient) + drive.growthOfScrew * (screw - ambient),
    electricPower: copper + iron + guide + nut,
    copper,
    iron,
    guide,
    nut,
    sinkHeat: (copper + iron) * quick * 0.9,
  };
}

/** Growth that comes from the table can be cooled away, that of a screw cannot. */
function verdict(inAir: HeatState, { ambient, growthLimit }: JobValues): CoolingVerdict {
  const met = inAir.growth <= growthLimit;
  const reachable = inAir.nut === 0;
  const coolant = {
    heat: 1.2 * (inAir.copper + inAir.iron),
    carrier: ambient - 2,
    temperature: ambient - 8,
    conductance: null,
  };
  return {
    targets: [
      { of: 'winding', limit: 110, inAir: inAir.windingPeak, metInAir: true, coolant: null },
      {
        of: 'growth',
        limit: growthLimit,
        inAir: inAir.growth,
        metInAir: met,
        coolant: met || !reachable ? null : coolant,
      },
    ],
    chillerNeeded: !met && reachable,
    heat: met || !reachable ? 0 : coolant.heat,
    outOfReach: met || reachable ? [] : ['growth'],
  };
}
