/**
 * How many letters have to be put in, left out, changed or swapped with their neighbor to make one word of another: the
 * distance of Damerau and Levenshtein in its simple form ("optimal string alignment").
 */
export function lettersApart(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, (before[j - 2] ?? 0) + 1);
      row.push(least);
    }
    [before, last] = [last, row];
  }
  return last[b.length] ?? 0;
}

/** The one word of a list that was meant by a misspelled one; null when there is none, or more than one. */
export function meantWord(word: string, words: readonly string[]): string | null {
  if (word.length < 5 || words.includes(word)) return null;
  const most = word.length < 7 ? 1 : 2;
  const near = words.filter((one) => one[0] === word[0] && lettersApart(word, one) <= most);
  return near.length === 1 ? (near[0] ?? null) : null;
}
