/** Elements of a WebM file (Matroska, RFC 9559) that are looked into, and those that hold a picture. */
const SEGMENT = 0x18538067;
const CLUSTER = 0x1f43b675;
const BLOCK_GROUP = 0xa0;
const SIMPLE_BLOCK = 0xa3;

/** Bytes of the data of each picture in a WebM file. */
export function webmPictures(file: Uint8Array, from = 0, to = file.length): number[] {
  const found: number[] = [];
  for (let at = from; at < to; ) {
    const id = variableInteger(file, at, true);
    const size = variableInteger(file, at + id.length, false);
    const begin = at + id.length + size.length;
    const end = size.isUnknown ? to : begin + size.value;
    if (id.value === SEGMENT || id.value === CLUSTER) found.push(...webmPictures(file, begin, end));
    else if (id.value === BLOCK_GROUP || id.value === SIMPLE_BLOCK) found.push(size.value);
    at = end;
  }
  return found;
}

/** A number whose leading zeros say how many bytes it takes (EBML, RFC 8794). */
function variableInteger(file: Uint8Array, at: number, keepsMarker: boolean) {
  const [first = 0] = file.subarray(at, at + 1);
  const length = Math.clz32(first) - 23;
  const mask = 0xff >> length;
  let value = keepsMarker ? first : first & mask;
  let isUnknown = (first & mask) === mask;
  for (const byte of file.subarray(at + 1, at + length)) {
    value = 256 * value + byte;
    isUnknown &&= byte === 0xff;
  }
  return { value, length, isUnknown };
}
