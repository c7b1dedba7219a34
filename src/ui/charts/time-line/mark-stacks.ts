/** Marks that stand too near together to be told apart on the line; they are piled up in the order of their times. */
export interface Stack<Mark> {
  /** Where its left edge stands, in pixels of the track. */
  readonly left: number;
  readonly marks: readonly Mark[];
}

/**
 * Piles marks up so that no two piles overlap. Where marks nearly touch, the later one moves aside by up to half its
 * width; where that is not enough it joins the pile. So no mark is drawn further than half its width from its time,
 * except where the line ends.
 * @param marks in the order of their times
 * @param place where a mark's middle belongs, in pixels of the track; never falls from one mark to the next
 * @param width of a mark, in pixels
 * @param track the length of the line, in pixels; marks at its ends stay on it
 */
export function stackMarks<Mark>(
  marks: readonly Mark[],
  place: (mark: Mark) => number,
  width: number,
  track: number,
): readonly Stack<Mark>[] {
  const stacks: { left: number; marks: Mark[] }[] = [];
  for (const mark of marks) {
    const own = Math.max(0, Math.min(track - width, place(mark) - width / 2));
    const last = stacks.at(-1);
    const aside = Math.max(own, last === undefined ? 0 : last.left + width);
    if (last !== undefined && (aside - own > width / 2 || aside > track - width)) last.marks.push(mark);
    else stacks.push({ left: aside, marks: [mark] });
  }
  return stacks;
}
