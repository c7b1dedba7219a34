/**
 * The one way to write a value as JSON, so that equal values have equal hashes: no blanks, members sorted by the UTF-16
 * code units of their names, numbers and strings as ECMAScript writes them. This is RFC 8785 (JSON Canonicalization
 * Scheme), with one addition: a member that is `undefined` is left out, as if it were not there.
 *
 * @throws TypeError for what JSON cannot hold: a number that is not finite, a function, a bigint, `undefined` in a list.
 */
export function canonicalJson(value: unknown): string {
  switch (typeof value) {
    case 'string':
    case 'boolean':
      return JSON.stringify(value);
    case 'number':
      if (!Number.isFinite(value)) throw new TypeError(`JSON cannot hold ${value}`);
      return JSON.stringify(value);
    case 'object':
      if (value === null) return 'null';
      if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
      // Any object that is no list is one with named members.
      return canonicalObject(value as Readonly<Record<string, unknown>>);
    default:
      throw new TypeError(`JSON cannot hold a ${typeof value}`);
  }
}

function canonicalObject(value: Readonly<Record<string, unknown>>): string {
  let text = '';
  for (const name of Object.keys(value).sort()) {
    const member = value[name];
    if (member !== undefined) text += `${text === '' ? '' : ','}${JSON.stringify(name)}:${canonicalJson(member)}`;
  }
  return `{${text}}`;
}
