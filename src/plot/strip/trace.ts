import type { ChannelName, Quantity } from '../../../shared/core/channels.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { Dash } from '../pens.ts';

/** A channel of the run as a line of a strip chart. */
export interface Trace {
  readonly channel: ChannelName;
  readonly name: string;
  readonly quantity: Quantity;
  readonly dash: Dash;
  /** Width of the line, CSS pixels. */
  readonly width: number;
  /** Whether drives of these parameters have such a quantity; all have it unless stated. */
  readonly relevant?: (p: Parameters) => boolean;
}

/** A range that means something, such as the window that counts as settled. */
export interface Band {
  readonly name: string;
  readonly low: number;
  readonly high: number;
}
