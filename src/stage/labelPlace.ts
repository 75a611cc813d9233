/** A rectangle on the stage, CSS pixels from its corner. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Between a label and what it must not cover, CSS pixels. */
const GAP = 4;

/** Where a label goes: above its point, inside the width of the stage, and below every box that it would cover there. */
export function labelPlace(
  point: { readonly x: number; readonly y: number },
  { width, height }: Pick<Box, 'width' | 'height'>,
  stageWidth: number,
  taken: readonly Box[],
): Pick<Box, 'left' | 'top'> {
  const left = Math.max(0, Math.min(point.x - width / 2, stageWidth - width));
  let top = Math.max(0, point.y - 2.2 * height);
  const byBottom = [...taken].sort((a, b) => a.top + a.height - b.top - b.height);
  for (const box of byBottom) {
    const isBeside = left >= box.left + box.width || left + width <= box.left;
    const isAbove = top + height <= box.top;
    const bottom = box.top + box.height;
    if (!isBeside && !isAbove && top < bottom) top = bottom + GAP;
  }
  return { left, top };
}
