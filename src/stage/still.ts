import { cssColour } from '../ui/look/colours.ts';
import { copyOver } from './copyOver.ts';

interface StillPicture {
  readonly canvas: HTMLCanvasElement;
  readonly pen: CanvasRenderingContext2D;
  /** Pixels of it to a CSS pixel of the stage. */
  readonly scale: number;
}

/** A copy of a stage that is `width` CSS pixels wide, as it is drawn now on its background, for what lies over it to be added. */
export function stillOf(picture: HTMLCanvasElement, width: number): StillPicture {
  const { canvas, pen } = blank(picture.width, picture.height);
  paintGround(pen, canvas.width, canvas.height);
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return { canvas, pen, scale: picture.width / width };
}

/** What a line below a picture tells: at its left, and at its right. */
export type CaptionLine = readonly [string, string];

/** Height of that line, in letters. */
const LINE = 2.25;

/** A picture of all that is seen in the place of the stage, with a line below it that tells what it is. */
export class CaptionedStill {
  readonly canvas: HTMLCanvasElement;
  readonly #pen: CanvasRenderingContext2D;

  /** Pixels. */
  constructor({ width, height }: { readonly width: number; readonly height: number }) {
    ({ canvas: this.canvas, pen: this.#pen } = blank(width, height));
  }

  /** CSS pixels of such a picture of `host`. */
  static sizeOf(host: HTMLElement): { width: number; height: number } {
    return { width: host.clientWidth, height: host.clientHeight + LINE * letters(host) };
  }

  /** To be called where the 3D picture has been drawn just now: once it is on the screen it cannot be copied. */
  take(host: HTMLElement, line: CaptionLine): void {
    const pen = this.#pen;
    const { width, height } = CaptionedStill.sizeOf(host);
    const scale = Math.min(this.canvas.width / width, this.canvas.height / height);
    pen.setTransform(scale, 0, 0, scale, 0, 0);
    paintGround(pen, width, host.clientHeight);
    pen.save();
    pen.beginPath();
    pen.rect(0, 0, width, host.clientHeight);
    pen.clip();
    copyOver(pen, host);
    pen.restore();
    this.#write(line, host, width, height);
  }

  #write([left, right]: CaptionLine, host: HTMLElement, width: number, height: number): void {
    const pen = this.#pen;
    const size = letters(host);
    pen.fillStyle = cssColour('--panel');
    pen.fillRect(0, host.clientHeight, width, height - host.clientHeight);
    pen.fillStyle = cssColour('--ink');
    pen.font = `${size}px ${getComputedStyle(host).fontFamily}`;
    pen.textBaseline = 'middle';
    const y = (host.clientHeight + height) / 2;
    const taken = pen.measureText(right).width;
    pen.fillText(right, width - taken - size, y);
    // Narrower letters rather than a title that is cut.
    pen.fillText(left, size, y, Math.max(width - taken - 3 * size, size));
    pen.textBaseline = 'alphabetic';
  }
}

function letters(host: HTMLElement): number {
  return Number.parseFloat(getComputedStyle(host).fontSize);
}

function blank(width: number, height: number) {
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [width, height];
  return { canvas, pen: canvas.getContext('2d') as CanvasRenderingContext2D };
}

/** The ground of a stage, as its style has it. */
function paintGround(pen: CanvasRenderingContext2D, width: number, height: number): void {
  const glow = pen.createRadialGradient(width / 2, 0.42 * height, 0, width / 2, 0.42 * height, 0.75 * width);
  glow.addColorStop(0, cssColour('--stage-near'));
  glow.addColorStop(1, cssColour('--stage-far'));
  pen.fillStyle = glow;
  pen.fillRect(0, 0, width, height);
}
