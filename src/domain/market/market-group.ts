/** Lots whose rivals are taken to be alike. A part that nobody knows is an empty text, and is a group of its own. */
export interface MarketGroup {
  /** Which line of cars: "alderman cargo". */
  readonly carClass: string;
  /** `id` of the title brand. */
  readonly title: string;
  /** What kind of seller: "rental", "dealer". */
  readonly seller: string;
  /** `id` of the venue, or what it was called. */
  readonly venue: string;
}

/** The same text for the same group, whatever its case and blanks. */
export function groupKey({ carClass, title, seller, venue }: MarketGroup): string {
  return [carClass, title, seller, venue].map((part) => part.trim().toLowerCase()).join('\n');
}
