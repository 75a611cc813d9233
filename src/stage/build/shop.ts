import type { Bin } from './bin.ts';
import type { Materials } from './materials.ts';

/** What every part is made with: the materials of the stage, and the bin of the machine it belongs to. */
export interface Shop {
  readonly bin: Bin;
  readonly m: Materials;
}
