/** A value as plain JSON, and its one canonical text. */
export interface CanonicalForm {
  readonly text: string;
  /** Equal to what parsing the text gives. */
  readonly plain: unknown;
  /** Whether JSON.stringify writes it, and each part of it, in the same way. */
  readonly ordered: boolean;
}

/**
 * The one way to write a value as JSON, so that equal values have equal hashes: no blanks, members sorted by the UTF-16
 * code units of their names, numbers and strings as ECMAScript writes them. This is RFC 8785 (JSON Canonicalization
 * Scheme), with one addition: a member that is `undefined` is left out, as if it were not there. (The `canonicalize`
 * package is a judge in the tests only: it refuses half a surrogate pair, which a text cut off on a page may end in, and
 * takes three times as long.)
 *
 * @throws TypeError for what JSON cannot hold: a number that is not finite, a function, a bigint, `undefined` in a list.
 */
export function canonicalForm(value: unknown): CanonicalForm {
  const order = { kept: true };
  const plain = sortedCopy(value, order);
  if (order.kept) return { text: JSON.stringify(plain), plain, ordered: true };
  const text = writtenOut(plain);
  return { text, plain: JSON.parse(text), ordered: false };
}

/** The text alone. */
export function canonicalJson(value: unknown): string {
  return canonicalForm(value).text;
}

/**
 * A copy whose members were put in by their names' order, which is the order in which the browser's own, much quicker
 * writer takes them: but for names that objects treat in a way of their own, and then `order.kept` says so.
 */
function sortedCopy(value: unknown, order: { kept: boolean }): unknown {
  switch (typeof value) {
    case 'string':
    case 'boolean':
      return value;
    case 'number':
      if (!Number.isFinite(value)) throw new TypeError(`JSON cannot hold ${value}`);
      // JSON has one zero.
      return value === 0 ? 0 : value;
    case 'object':
      if (value === null) return null;
      if (Array.isArray(value)) return Array.from(value, (item) => sortedCopy(item, order));
      // Any object that is no list is one with named members.
      return sortedMembers(value as Readonly<Record<string, unknown>>, order);
    default:
      throw new TypeError(`JSON cannot hold a ${typeof value}`);
  }
}

function sortedMembers(members: Readonly<Record<string, unknown>>, order: { kept: boolean }): Record<string, unknown> {
  const copy: Record<string, unknown> = {};
  for (const name of Object.keys(members).sort()) {
    const member = members[name];
    if (member === undefined) continue;
    const plain = sortedCopy(member, order);
    if (isOrdinary(name)) copy[name] = plain;
    else {
      order.kept = false;
      setOwn(copy, name, plain);
    }
  }
  return copy;
}

/** Whether an object holds the name in the order in which it was given it. */
function isOrdinary(name: string): boolean {
  const first = name.charCodeAt(0);
  return !(first >= DIGIT_ZERO && first <= DIGIT_NINE) && name !== '__proto__';
}

const DIGIT_ZERO = 48;
const DIGIT_NINE = 57;

function setOwn(copy: Record<string, unknown>, name: string, value: unknown): void {
  Object.defineProperty(copy, name, { value, enumerable: true, configurable: true, writable: true });
}

/** As JSON, whatever its members are called: an object gives those that look like numbers first, and by their size. */
function writtenOut(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(writtenOut).join(',')}]`;
  const members = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${members.map(([name, member]) => `${JSON.stringify(name)}:${writtenOut(member)}`).join(',')}}`;
}
