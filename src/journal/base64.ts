/** How many bytes are turned into characters at once: what every browser takes as arguments of one call. */
const STEP = 3 * 2 ** 13;

/** Base 64 with the usual alphabet and padding (RFC 4648, section 4). */
export function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += STEP)
    text += btoa(String.fromCharCode(...bytes.subarray(at, Math.min(bytes.length, at + STEP))));
  return text;
}

/**
 * The bytes, or null when the text is no base 64. There is one text for any bytes: blanks, missing padding and left-over
 * bits (RFC 4648, section 3.5) are not taken, so that nothing can hide in the spelling.
 */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> | null {
  let plain: string;
  try {
    plain = atob(text);
  } catch {
    return null;
  }
  const bytes = new Uint8Array(plain.length);
  for (let i = 0; i < plain.length; i++) bytes[i] = plain.charCodeAt(i);
  return isPlain(text) ? bytes : null;
}

/** Whether a text that is base 64 is spelled in the one way: then turning its last bytes around gives its end again. */
function isPlain(text: string): boolean {
  if (!/^[A-Za-z0-9+/]*={0,2}$/.test(text) || text.length % 4 !== 0) return false;
  const end = text.slice(-4);
  return end === '' || btoa(atob(end)) === end;
}
