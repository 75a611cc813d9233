/** Uniform numbers in [0, 1) from a seed: the 32-bit generator mulberry32 (T. Ettinger, public domain). */
export function seeded(seed: number): () => number {
  // Signed, since the engine keeps an integer beyond 31 bits on the heap.
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
