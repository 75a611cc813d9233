/** A complex number. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const ZERO: Complex = { re: 0, im: 0 };
export const ONE: Complex = { re: 1, im: 0 };

export function real(value: number): Complex {
  return { re: value, im: 0 };
}

export function plus(a: Complex, b: Complex): Complex {
  return { re: a.re + b.re, im: a.im + b.im };
}

export function minus(a: Complex, b: Complex): Complex {
  return { re: a.re - b.re, im: a.im - b.im };
}

export function times(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

export function scaled(a: Complex, factor: number): Complex {
  return { re: a.re * factor, im: a.im * factor };
}

export function over(a: Complex, b: Complex): Complex {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
}

export function magnitude(a: Complex): number {
  return Math.hypot(a.re, a.im);
}

/** In (−π, π]. */
export function phase(a: Complex): number {
  return Math.atan2(a.im, a.re);
}

/** exp(jφ) */
export function unit(angle: number): Complex {
  return { re: Math.cos(angle), im: Math.sin(angle) };
}
