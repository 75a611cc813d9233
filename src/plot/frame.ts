/** A rectangle in which curves are drawn, px: CSS pixels of a canvas, or units of a drawing. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Width and height of a drawing at its natural size, px. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

export const NO_FRAME: Frame = { left: 0, top: 0, width: 0, height: 0 };

export const rightOf = ({ left, width }: Frame): number => left + width;

export const footOf = ({ top, height }: Frame): number => top + height;

/** Whether a place lies in a frame, its edges included. */
export function contains(frame: Frame, x: number, y: number): boolean {
  return x >= frame.left && x <= rightOf(frame) && y >= frame.top && y <= footOf(frame);
}
