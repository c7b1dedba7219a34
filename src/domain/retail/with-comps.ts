import type { Comp } from './comp.ts';

/** The comparables with `more` after them; one that was seen at the same place before is replaced by what it asks now. */
export function withComps(before: readonly Comp[], more: readonly Comp[]): Comp[] {
  const again = (one: Comp) =>
    more.some(({ source, kind }) => source !== undefined && source === one.source && kind === one.kind);
  return [...before.filter((one) => !again(one)), ...more];
}
