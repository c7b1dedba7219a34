/**
 * Whether bytes are one value of DER, to the last byte, and each value in it fills the one that it stands in (X.690, sections
 * 8.1.3 and 10.1): lengths are definite and as short as they can be. Lenient parsers read more than that.
 */
export function isDer(bytes: Uint8Array): boolean {
  return endOfValue(bytes, 0, bytes.length, 0) === bytes.length;
}

/** Deeper than any certificate; a file that nests further is made to take long. */
const DEEPEST = 40;
const CONSTRUCTED = 0x20;
/** A tag number that goes on in the next byte: none stands in a token. */
const HIGH_TAG = 0x1f;

/** Where the value at `at` ends, or -1 when it is none that ends by `end`. */
function endOfValue(bytes: Uint8Array, at: number, end: number, depth: number): number {
  const tag = bytes[at];
  if (depth > DEEPEST || at + 2 > end || tag === undefined || (tag & HIGH_TAG) === HIGH_TAG) return -1;
  const { from, length } = lengthAt(bytes, at + 1);
  const last = from + length;
  if (length < 0 || last > end) return -1;
  if ((tag & CONSTRUCTED) === 0) return last;
  let inner = from;
  while (inner < last) {
    inner = endOfValue(bytes, inner, last, depth + 1);
    if (inner === -1) return -1;
  }
  return last;
}

/** The length that is written at `at`, and where what has it begins; below 0 when it is not as short as it can be. */
function lengthAt(bytes: Uint8Array, at: number): { readonly from: number; readonly length: number } {
  const first = bytes[at] ?? 0x80;
  if (first < 0x80) return { from: at + 1, length: first };
  const more = first & 0x7f;
  const from = at + 1 + more;
  if (more === 0 || more > 3) return { from, length: -1 };
  let length = 0;
  for (const byte of bytes.subarray(at + 1, from)) length = length * 256 + byte;
  const shortest = length < 0x80 ? 0 : length < 0x100 ? 1 : length < 0x1_0000 ? 2 : 3;
  return { from, length: more === shortest ? length : -1 };
}
