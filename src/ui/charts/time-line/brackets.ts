import type { Stack } from './mark-stacks.ts';

/** A bracket under piles of marks: that many closings in it collide. */
export interface Bracket {
  /** Its ends in pixels of the track. */
  readonly left: number;
  readonly right: number;
  readonly count: number;
}

/** The collisions of a day over its piles; those whose brackets would share a pile are one bracket. */
export function bracketsOf<Mark>(
  stacks: readonly Stack<Mark>[],
  collisions: readonly { readonly closings: readonly Mark[] }[],
  width: number,
): readonly Bracket[] {
  const stackOf = new Map(stacks.flatMap((stack) => stack.marks.map((mark) => [mark, stack] as const)));
  const brackets: Bracket[] = [];
  for (const { closings } of collisions) {
    // Piles stand in the order of their marks, so the first and the last mark reach furthest.
    const [first, last] = [closings[0], closings.at(-1)].map((mark) => mark && stackOf.get(mark));
    if (first === undefined || last === undefined) continue;
    const next = { left: first.left, right: last.left + width, count: closings.length };
    const before = brackets.at(-1);
    if (before === undefined || next.left >= before.right) brackets.push(next);
    else
      brackets[brackets.length - 1] = {
        left: Math.min(before.left, next.left),
        right: Math.max(before.right, next.right),
        count: before.count + next.count,
      };
  }
  return brackets;
}
