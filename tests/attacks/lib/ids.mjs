const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** The time in an id, in milliseconds since 1970: its first ten characters, five bits each. */
export const timeOf = (id) =>
  [...id.slice(0, 10)].reduce((sum, character) => sum * 32 + ALPHABET.indexOf(character), 0);

/** The same id with another time. */
export function withTime(id, time) {
  let text = '';
  for (let rest = time, i = 0; i < 10; i++, rest = Math.floor(rest / 32)) text = ALPHABET[rest % 32] + text;
  return text + id.slice(10);
}

/** An id that sorts right after another and is of the same moment. */
export function nextId(id) {
  const counter = [...id.slice(10, 14)].reduce((sum, character) => sum * 32 + ALPHABET.indexOf(character), 0) + 32;
  let text = '';
  for (let rest = counter, i = 0; i < 4; i++, rest = Math.floor(rest / 32)) text = ALPHABET[rest % 32] + text;
  return id.slice(0, 10) + text + id.slice(14);
}
