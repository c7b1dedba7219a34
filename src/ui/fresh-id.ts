const LETTERS = 'abcdefghjkmnpqrstvwxyz0123456789';

/**
 * An id that no entry has or ever had: lots keep naming a removed venue, and a new one must not inherit them.
 * @param kind a word in front, so that a saved file can be read by people
 */
export function freshId(kind: string): string {
  const random = crypto.getRandomValues(new Uint8Array(10));
  return `${kind}-${Array.from(random, (byte) => LETTERS[byte % LETTERS.length]).join('')}`;
}
