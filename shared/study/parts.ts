import type { ParameterChanges, Parameters } from '../core/parameters/table.ts';

/** What a part costs in money and care, in three steps. */
export type Effort = 'low' | 'medium' | 'high';

/** One of the parts that a machine builder chooses beside the drive. */
interface Part {
  /** As it reads behind 'Guide', 'Encoder' or 'Screw': a scale with its signal period and its grade. */
  readonly title: string;
  /** Short, for the name of a candidate; empty for what is usual. */
  readonly brief: string;
  /** Null: it comes with the drive. */
  readonly effort: Effort | null;
  readonly changes: ParameterChanges;
}

/*
 * Values of common practice, no source, unless one is named: rolling guides have 0.002 to 0.005 of friction and a few newtons of seals;
 * crossed rollers have no seals; an air bearing has the drag of its film alone. Signal periods, interpolation errors and grades
 * (largest deviation within a metre, each way) are those of the usual kinds of scale.
 */
const GUIDES = {
  ball: {
    title: 'recirculating balls',
    brief: '',
    effort: 'low',
    changes: {},
  },
  roller: {
    title: 'crossed rollers',
    brief: 'crossed rollers',
    effort: 'medium',
    changes: {
      frictionCoefficient: 0.002,
      stictionCoefficient: 0.003,
      sealFriction: 0.5,
      sealStiction: 0.7,
      bristleStiffness: 5e7,
      viscous: 8,
    },
  },
  air: {
    title: 'air bearing',
    brief: 'air bearing',
    effort: 'high',
    changes: {
      frictionCoefficient: 0,
      stictionCoefficient: 0,
      sealFriction: 0,
      sealStiction: 0,
      viscous: 0.5,
    },
  },
} as const satisfies Record<string, Part>;

const ENCODERS = {
  interferential: {
    title: 'interferential, 0.5 µm, ±0.5 µm/m',
    brief: 'interferential scale',
    effort: 'high',
    changes: {
      encoderSide: 'load',
      encoderResolution: 1e-10,
      signalPeriod: 5e-7,
      interpolation1: 5e-10,
      interpolation2: 3e-10,
      encoderNoise: 5e-11,
      longError: 5e-7,
      longErrorPeriod: 1,
      scaleExpansion: 0,
    },
  },
  optical: {
    title: 'optical, 20 µm, ±3 µm/m',
    brief: 'optical scale',
    effort: 'medium',
    changes: {
      encoderSide: 'load',
      encoderResolution: 1e-9,
      signalPeriod: 2e-5,
      interpolation1: 6e-9,
      interpolation2: 3e-9,
      encoderNoise: 3e-10,
      longError: 3e-6,
      longErrorPeriod: 1,
      scaleExpansion: 8e-6,
    },
  },
  magnetic: {
    title: 'magnetic, 1 mm, ±15 µm/m',
    brief: 'magnetic scale',
    effort: 'low',
    changes: {
      encoderSide: 'load',
      encoderResolution: 1e-7,
      signalPeriod: 1e-3,
      interpolation1: 1.5e-6,
      interpolation2: 7e-7,
      encoderNoise: 5e-8,
      longError: 1.5e-5,
      longErrorPeriod: 1,
      scaleExpansion: 1.1e-5,
    },
  },
  motor: {
    title: 'on the motor',
    brief: '',
    effort: null,
    changes: {},
  },
} as const satisfies Record<string, Part>;

/** ISO 3408-3:2006, table of permissible travel variation within 300 mm (v_300p) and within a revolution (v_2πp), from memory; half of each. */
const screw = (
  grade: number,
  v300: number,
  vRevolution: number,
  brief = `screw of grade ${grade}`,
): Part => ({
  title: `grade ${grade}, ${v300 * 1e6} µm in 300 mm`,
  brief,
  effort: grade > 4 ? 'medium' : 'high',
  changes: { longError: v300 / 2, longErrorPeriod: 0.3, leadError: vRevolution / 2 },
});

const SCREWS = {
  grade1: screw(1, 6e-6, 4e-6),
  grade3: screw(3, 12e-6, 6e-6),
  grade5: screw(5, 23e-6, 8e-6, ''),
} as const satisfies Record<string, Part>;

/*
 * How the ends of a screw are held: the end at the motor is fixed in its bearings, the far one is supported, free, or fixed as well. A screw
 * between two fixed ends is stretched by the warming that is expected, 2 to 5 K (common practice, no source).
 */
const SUPPORTS = {
  supported: {
    title: 'fixed–supported',
    brief: '',
    effort: null,
    changes: {},
  },
  free: {
    title: 'fixed–free',
    brief: 'screw fixed–free',
    effort: null,
    changes: { screwSupport: 'free' },
  },
  fixed: {
    title: 'fixed–fixed',
    brief: 'screw fixed–fixed',
    effort: 'low',
    changes: { screwSupport: 'fixed' },
  },
  stretched3: {
    title: 'fixed–fixed, stretched for 3 K',
    brief: 'screw fixed–fixed, stretched for 3 K',
    effort: 'medium',
    changes: { screwSupport: 'fixed', screwPretension: 3 },
  },
  stretched5: {
    title: 'fixed–fixed, stretched for 5 K',
    brief: 'screw fixed–fixed, stretched for 5 K',
    effort: 'medium',
    changes: { screwSupport: 'fixed', screwPretension: 5 },
  },
} as const satisfies Record<string, Part>;

export const PARTS = { guide: GUIDES, encoder: ENCODERS, screw: SCREWS, support: SUPPORTS } as const;

export type GuideId = keyof typeof GUIDES;
export type PartKind = keyof typeof PARTS;
export const PART_KINDS = Object.keys(PARTS) as readonly PartKind[];

export const PART_LABELS: Readonly<Record<PartKind, string>> = {
  guide: 'Guide',
  encoder: 'Encoder',
  screw: 'Screw',
  support: 'Ends of the screw',
};

/** The parts of one machine. */
interface ChosenParts {
  readonly guide: keyof typeof GUIDES;
  readonly encoder: keyof typeof ENCODERS;
  readonly screw: keyof typeof SCREWS;
  readonly support: keyof typeof SUPPORTS;
}

/** Those that somebody chose. */
export type PartChoice = Partial<ChosenParts>;

/** What a part takes; null where it comes with the drive. */
export function partEffort(kind: PartKind, id: string): Effort | null {
  const parts: Readonly<Record<string, Part>> = PARTS[kind];
  return parts[id]?.effort ?? null;
}

type Drive = Pick<Parameters, 'lead'>;

/** What the machine has: the usual where nothing was chosen, which for a screw is an encoder on its motor. */
export function chosenParts({ lead }: Drive, choice: PartChoice = {}): ChosenParts {
  const encoder = lead > 0 ? 'motor' : 'optical';
  return { guide: 'ball', encoder, screw: 'grade5', support: 'supported', ...choice };
}

/** Parts of a kind that fit a drive: only a screw turns an encoder on its motor, or has a grade and ends. */
export function fittingParts(kind: PartKind, { lead }: Drive): readonly string[] {
  if (lead > 0) return Object.keys(PARTS[kind]);
  if (kind === 'screw' || kind === 'support') return [];
  return Object.keys(PARTS[kind]).filter((id) => id !== 'motor');
}

/** What the parts change in an axis with this drive. A screw's lead shows only where its own motor is what is read. */
export function partChanges(drive: Drive, choice: PartChoice = {}): ParameterChanges {
  const { guide, encoder, screw: grade, support } = chosenParts(drive, choice);
  const onMotor = encoder === 'motor';
  return {
    ...GUIDES[guide].changes,
    ...ENCODERS[encoder].changes,
    ...(onMotor ? SCREWS[grade].changes : {}),
    ...SUPPORTS[support].changes,
  };
}

/** What is not usual about a machine: 'air bearing, interferential scale'; empty where all is. */
export function partsText(drive: Drive, choice: PartChoice = {}): string {
  const usual = chosenParts(drive);
  const chosen = chosenParts(drive, choice);
  const briefs = [
    chosen.guide === usual.guide ? '' : GUIDES[chosen.guide].brief,
    chosen.encoder === usual.encoder ? '' : ENCODERS[chosen.encoder].brief,
    chosen.screw === usual.screw || chosen.encoder !== 'motor' ? '' : SCREWS[chosen.screw].brief,
    SUPPORTS[chosen.support].brief,
  ];
  return briefs.filter((each) => each !== '').join(', ');
}
