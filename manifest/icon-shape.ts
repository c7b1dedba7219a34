/** One upright rectangle on a grid of 16 by 16 units, y pointing down. */
export interface Block {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The sheet of paper the drawing stands on, and the radius of its corners in units. */
export const PAPER = { colour: '#faf7f0', cornerRadius: 3 } as const;

export const INK = '#0b5d66';

/** A ceiling, and stairs that lead down from it: the further down the price stands, the more headroom there is. */
export const BLOCKS: readonly Block[] = [
  { left: 2, top: 2, right: 14, bottom: 4 },
  { left: 2, top: 6, right: 6, bottom: 14 },
  { left: 6, top: 9, right: 10, bottom: 14 },
  { left: 10, top: 12, right: 14, bottom: 14 },
];
