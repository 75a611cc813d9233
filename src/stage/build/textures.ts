import { CanvasTexture, LinearMipmapLinearFilter, RepeatWrapping, SRGBColorSpace } from 'three';

type Painter = (pen: CanvasRenderingContext2D, width: number, height: number) => void;

interface TextureOptions {
  /** Colours need the screen's transfer curve; roughness and bump do not. */
  readonly colour: boolean;
  readonly repeat?: boolean;
}

/** A texture painted on the spot. */
export function painted(
  width: number,
  height: number,
  { colour, repeat = true }: TextureOptions,
  paint: Painter,
): CanvasTexture {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  paint(canvas.getContext('2d') as CanvasRenderingContext2D, width, height);
  const texture = new CanvasTexture(canvas);
  if (colour) texture.colorSpace = SRGBColorSpace;
  if (repeat) texture.wrapS = texture.wrapT = RepeatWrapping;
  texture.minFilter = LinearMipmapLinearFilter;
  texture.anisotropy = 8;
  return texture;
}

/** The same grain on every start (Lehmer's generator, Park and Miller 1988). */
function lehmer(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Dark granite: feldspar, quartz and mica grains; a tile holds some 200 grains across. */
export function granite(): CanvasTexture {
  return painted(512, 512, { colour: true }, (pen, width, height) => {
    const random = lehmer(71);
    pen.fillStyle = '#55595d';
    pen.fillRect(0, 0, width, height);
    const grains: [colour: string, count: number, size: number][] = [
      ['#4a4e52', 5200, 2.6],
      ['#62666a', 5200, 2.3],
      ['#3b3f43', 3600, 1.7],
      ['#767b7f', 1500, 1.4],
      ['#9ba0a3', 380, 1],
      ['#2a2d30', 1300, 1.2],
    ];
    for (const [colour, count, size] of grains) {
      pen.fillStyle = colour;
      for (let i = 0; i < count; i++) {
        const r = size * (0.4 + random());
        pen.globalAlpha = 0.35 + 0.5 * random();
        pen.beginPath();
        pen.ellipse(
          random() * width,
          random() * height,
          r,
          r * (0.45 + 0.5 * random()),
          Math.PI * random(),
          0,
          2 * Math.PI,
        );
        pen.fill();
      }
    }
  });
}

/** Fine lines along u, as a grinding wheel leaves them: a roughness map. */
export function ground(): CanvasTexture {
  return painted(256, 256, { colour: false }, (pen, width, height) => {
    const random = lehmer(17);
    pen.fillStyle = '#b4b4b4';
    pen.fillRect(0, 0, width, height);
    for (let i = 0; i < 900; i++) {
      const tone = Math.round(70 + 185 * random());
      pen.fillStyle = `rgb(${tone} ${tone} ${tone} / 40%)`;
      pen.fillRect(random() * width - 60, random() * height, 40 + 200 * random(), 0.6 + random());
    }
  });
}

/** Wires side by side, `turns` of them over v: a bump map. */
export function wires(turns: number): CanvasTexture {
  return painted(8, 16 * turns, { colour: false }, (pen, width, height) => {
    for (let y = 0; y < height; y++) {
      const tone = Math.round(255 * Math.abs(Math.sin((Math.PI * y * turns) / height)));
      pen.fillStyle = `rgb(${tone} ${tone} ${tone})`;
      pen.fillRect(0, y, width, 1);
    }
  });
}

/** Hatching of a cut face, as on a drawing. */
export function hatching(ground: string, line: string): CanvasTexture {
  return painted(64, 64, { colour: true }, (pen, width, height) => {
    pen.fillStyle = ground;
    pen.fillRect(0, 0, width, height);
    pen.strokeStyle = line;
    pen.lineWidth = 5;
    for (const shift of [-64, -32, 0, 32, 64]) {
      pen.beginPath();
      pen.moveTo(shift - 8, -8);
      pen.lineTo(shift + 72, 72);
      pen.stroke();
    }
  });
}

/** A letter on white, to be multiplied with its metal; the outer rim is blank. */
export function plateLetter(letter: string): CanvasTexture {
  return painted(128, 128, { colour: true, repeat: false }, (pen, width, height) => {
    pen.fillStyle = '#ffffff';
    pen.fillRect(0, 0, width, height);
    pen.fillStyle = '#2a2c2f';
    pen.font = `700 92px sans-serif`;
    pen.textAlign = 'center';
    pen.textBaseline = 'middle';
    pen.fillText(letter, width / 2, height / 2 + 5);
  });
}
