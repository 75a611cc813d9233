import type { BodeName } from '../../plot/loop/responses.ts';

export type PaneName = BodeName | 'nyquist' | 'eigenvalues';

/** A place for one pane or several, of which it shows one at a time. */
export type Slot = readonly [first: PaneName, ...others: PaneName[]];

/** Places side by side and one over the other. */
export interface Arrangement {
  readonly name: 'narrow' | 'wide' | 'tall' | 'full';
  readonly slots: readonly Slot[];
}

/** Sizes from which there is room for more, in multiples of the page's text size. */
const WIDE = 68;
const TALL = 22.5;
const FULL = 25;

/** Which plots stand beside each other on so much room. */
export function arrangementFor(width: number, height: number): Arrangement {
  if (height >= FULL && width >= WIDE) {
    return { name: 'full', slots: [['open'], ['closed'], ['stiffness'], ['nyquist'], ['eigenvalues']] };
  }
  if (height >= TALL && width < WIDE)
    return { name: 'tall', slots: [['open'], ['closed', 'stiffness'], ['nyquist', 'eigenvalues']] };
  if (width >= WIDE)
    return { name: 'wide', slots: [['open'], ['closed', 'stiffness'], ['nyquist', 'eigenvalues']] };
  return {
    name: 'narrow',
    slots: [
      ['open', 'closed', 'stiffness'],
      ['nyquist', 'eigenvalues'],
    ],
  };
}
