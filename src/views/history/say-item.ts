import { attempt } from '../../domain/attempt.ts';
import type { ReadEntry } from '../../journal/read-entry.ts';
import { sayHappening } from './say-happening.ts';

/** One entry of a history in words, whatever state it is in. */
export function sayItem(read: ReadEntry): string {
  if (read.as === 'unreadable') return `An entry that can’t be read: ${read.message}`;
  if (read.as === 'unknown') return 'Something a newer Headroom wrote';
  const words = attempt(() => sayHappening(read.entry.happening));
  return words.ok ? words.value : `An entry that can’t be put into words: ${words.short}`;
}
