import type { LotId } from '../domain/lot/lot.ts';
import type { Instant } from '../domain/time/instant.ts';
import { type DeviceId, deviceIdSchema, type EntryId } from './ids.ts';

/** How many random bytes one entry or lot id takes. */
export const ID_RANDOM_BYTES = 8;
/** How many random bytes a device id takes. */
export const DEVICE_RANDOM_BYTES = 10;

const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
/** Every two characters, by their value: ids are made by the ten thousand. */
const PAIRS = Array.from({ length: 1024 }, (_, i) => ALPHABET.charAt(i >> 5) + ALPHABET.charAt(i & 31));
const LATEST = 2 ** 48 - 1;
const COUNTERS = 2 ** 16;

/**
 * The next id in the ULID layout: 10 characters of time, then a counter of 16 bits and 64 random bits in 16 characters.
 *
 * It always sorts after `last`, even when the clock went backwards: the time in it is the later of `now` and the time in
 * `last`, and the counter tells ids of one millisecond apart. `last` must be the greatest id known, also of other
 * devices, so that whoever changes what he has seen is sorted after it. The fresh random bits keep two devices that
 * continue from the same `last` from making the same id. (The `ulid` package counts up from the last one instead, and so
 * gives two such devices the same id.)
 *
 * @param random ID_RANDOM_BYTES random bytes.
 * @throws RangeError when `now` does not fit 48 bits (after the year 10889) or `random` has another length.
 */
function nextSortableId(now: Instant, last: string | null, random: Uint8Array): string {
  if (now > LATEST) throw new RangeError(`not a time for an id: ${now}`);
  if (random.length !== ID_RANDOM_BYTES) throw new RangeError(`an id takes ${ID_RANDOM_BYTES} random bytes`);
  let time: number = now;
  let counter = 0;
  if (last !== null && timeOfId(last) >= now) {
    time = timeOfId(last);
    counter = Math.floor(decode(last.slice(10, 18)) / 2 ** 24) + 1;
    if (counter === COUNTERS) {
      time += 1;
      counter = 0;
    }
  }
  const [a = 0, b = 0, c = 0, ...rest] = random;
  const head = ((counter * 256 + a) * 256 + b) * 256 + c;
  return encode(time, 10) + encode(head, 8) + encode(numberOf(rest), 8);
}

export function nextEntryId(now: Instant, last: EntryId | null, random: Uint8Array): EntryId {
  // Branding: nextSortableId makes nothing else.
  return nextSortableId(now, last, random) as EntryId;
}

/** As nextEntryId; `last` is only needed to keep the lots of one batch in their order. */
export function nextLotId(now: Instant, last: LotId | null, random: Uint8Array): LotId {
  return nextSortableId(now, last, random) as LotId;
}

/** @param random DEVICE_RANDOM_BYTES random bytes. */
export function newDeviceId(random: Uint8Array): DeviceId {
  return deviceIdSchema.parse(Array.from(random, (byte) => ALPHABET.charAt(byte % 32)).join(''));
}

/** The time in an id, in milliseconds since 1970. Later than the clock said, where the clock went backwards. */
export function timeOfId(id: string): number {
  return decode(id.slice(0, 10));
}

/** @param length an even number of characters */
function encode(value: number, length: number): string {
  let text = '';
  let rest = value;
  for (let i = 0; i < length; i += 2) {
    text = PAIRS[rest % 1024] + text;
    rest = Math.floor(rest / 1024);
  }
  return text;
}

function decode(text: string): number {
  let value = 0;
  for (const character of text) value = value * 32 + ALPHABET.indexOf(character);
  return value;
}

function numberOf(bytes: Iterable<number>): number {
  let value = 0;
  for (const byte of bytes) value = value * 256 + byte;
  return value;
}
