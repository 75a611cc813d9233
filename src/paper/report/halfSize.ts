import type { Size } from '../../plot/frame.ts';

/** Of a drawing beside another, or beside its figures: its text is still of a size to be read on a sheet. */
export const HALF: Size = { width: 420, height: 250 };
