/** Words that stand in an address; as they are where nobody encoded them. */
export function decoded(words: string): string {
  try {
    return decodeURIComponent(words);
  } catch {
    return words;
  }
}
