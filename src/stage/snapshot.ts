import type { Overlay } from './overlay.ts';

/** The stage as it is drawn now, with its background, the lens and its leader line, as a PNG data URL. */
export function snapshot(root: HTMLElement, picture: HTMLCanvasElement, overlay: Overlay): string {
  const kept = document.createElement('canvas');
  const [w, h] = [picture.width, picture.height];
  [kept.width, kept.height] = [w, h];
  const pen = kept.getContext('2d') as CanvasRenderingContext2D;
  const style = getComputedStyle(root);
  const glow = pen.createRadialGradient(w / 2, 0.42 * h, 0, w / 2, 0.42 * h, 0.75 * w);
  glow.addColorStop(0, style.getPropertyValue('--stage-near'));
  glow.addColorStop(1, style.getPropertyValue('--stage-far'));
  pen.fillStyle = glow;
  pen.fillRect(0, 0, w, h);
  pen.drawImage(picture, 0, 0, w, h);
  overlay.copyTo(pen, w / root.clientWidth);
  return kept.toDataURL('image/png');
}
