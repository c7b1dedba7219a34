import fc from 'fast-check';
import { expect, test } from 'vitest';
import { instant } from '../../src/domain/time/instant.ts';
import { type EntryId, entryIdSchema } from '../../src/journal/ids.ts';
import { newDeviceId, nextEntryId, timeOfId } from '../../src/journal/sortable-id.ts';

const bytes = fc.uint8Array({ minLength: 8, maxLength: 8 });
const zeros = new Uint8Array(8);
const ones = new Uint8Array(8).fill(255);

test('an id sorts after every earlier one, whatever the clock does', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.nat({ max: 2 ** 31 - 1 }), bytes), { maxLength: 60 }), (draws) => {
      let last: EntryId | null = null;
      for (const [now, random] of draws) {
        const next: EntryId = nextEntryId(instant(now), last, random);
        if (last !== null) expect(next > last).toBe(true);
        expect(timeOfId(next)).toBeGreaterThanOrEqual(now);
        last = next;
      }
    }),
  );
});

test('the clock of the device is used while it goes forward', () => {
  const id = nextEntryId(instant(1_775_833_200_000), null, ones);
  expect(timeOfId(id)).toBe(1_775_833_200_000);
  expect(timeOfId(nextEntryId(instant(1_775_833_200_001), id, zeros))).toBe(1_775_833_200_001);
});

test('two devices that continue from the same entry in the same millisecond make different ids', () => {
  const shared = nextEntryId(instant(5000), null, zeros);
  const a = nextEntryId(instant(4000), shared, Uint8Array.of(1, 2, 3, 4, 5, 6, 7, 8));
  const b = nextEntryId(instant(4000), shared, Uint8Array.of(8, 7, 6, 5, 4, 3, 2, 1));
  expect(a).not.toBe(b);
  expect([a > shared, b > shared]).toEqual([true, true]);
});

test('when a millisecond has used up its 65,536 numbers, the next one is borrowed', () => {
  let last: EntryId | null = null;
  for (let i = 0; i < 65_536; i++) last = nextEntryId(instant(5000), last, ones);
  if (last === null) throw new Error('no id was made');
  expect(timeOfId(last)).toBe(5000);
  const next = nextEntryId(instant(5000), last, zeros);
  expect(timeOfId(next)).toBe(5001);
  expect(next > last).toBe(true);
});

test('an id of another program, all of it random, can be the last', () => {
  const foreign = entryIdSchema.parse('01ARZ3NDEKTSV4RRFFQ69G5FAV');
  expect(nextEntryId(instant(0), foreign, zeros) > foreign).toBe(true);
});

test('every random byte counts, and too few are refused', () => {
  for (let i = 0; i < 8; i++) {
    const random = new Uint8Array(8);
    random[i] = 1;
    expect(nextEntryId(instant(0), null, random)).not.toBe(nextEntryId(instant(0), null, zeros));
  }
  expect(() => nextEntryId(instant(0), null, new Uint8Array(4))).toThrow(RangeError);
});

test('a time that does not fit 48 bits is refused', () => {
  expect(timeOfId(nextEntryId(instant(2 ** 48 - 1), null, zeros))).toBe(2 ** 48 - 1);
  expect(() => nextEntryId(instant(2 ** 48), null, zeros)).toThrow(RangeError);
});

test('a device id takes five bits of each of its ten random bytes', () => {
  expect(newDeviceId(Uint8Array.of(0, 1, 2, 29, 30, 31, 32, 33, 64, 255))).toBe('012XYZ010Z');
});
