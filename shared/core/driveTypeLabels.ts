import type { DriveType } from './scene.ts';

/** What the drives of a form are called together. */
export const DRIVE_TYPE_LABELS: Readonly<Record<DriveType, string>> = {
  tubular: 'Tubular motors',
  'u-channel': 'U-channel motors',
  flat: 'Flat motors',
  screw: 'Screw drives',
};
