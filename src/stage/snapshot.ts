import { cssColour } from '../ui/look/colours.ts';

interface StillPicture {
  readonly canvas: HTMLCanvasElement;
  readonly pen: CanvasRenderingContext2D;
  /** Pixels of it to a CSS pixel of the stage. */
  readonly scale: number;
}

/** A copy of a stage that is `width` CSS pixels wide, as it is drawn now on its background, for what lies over it to be added. */
export function stillOf(picture: HTMLCanvasElement, width: number): StillPicture {
  const canvas = document.createElement('canvas');
  const [w, h] = [picture.width, picture.height];
  [canvas.width, canvas.height] = [w, h];
  const pen = canvas.getContext('2d') as CanvasRenderingContext2D;
  const glow = pen.createRadialGradient(w / 2, 0.42 * h, 0, w / 2, 0.42 * h, 0.75 * w);
  glow.addColorStop(0, cssColour('--stage-near'));
  glow.addColorStop(1, cssColour('--stage-far'));
  pen.fillStyle = glow;
  pen.fillRect(0, 0, w, h);
  pen.drawImage(picture, 0, 0, w, h);
  return { canvas, pen, scale: w / width };
}
