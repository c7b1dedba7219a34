/** Throws that come out the same each time for the same seed (Mulberry32, a public-domain generator by Tommy Ettinger; from memory). */
export class Dice {
  private state: number;

  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** At least 0 and less than 1. */
  fraction(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let mixed = this.state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  /** A whole number from `from` to `to`, both included. */
  whole(from: number, to: number): number {
    return from + Math.floor(this.fraction() * (to - from + 1));
  }

  happens(chance: number): boolean {
    return this.fraction() < chance;
  }

  one<Item>(items: readonly Item[]): Item {
    const item = items[this.whole(0, items.length - 1)];
    if (item === undefined) throw new RangeError('nothing to choose from');
    return item;
  }

  shuffled<Item>(items: readonly Item[]): readonly Item[] {
    return items
      .map((item) => ({ item, at: this.fraction() }))
      .sort((a, b) => a.at - b.at)
      .map(({ item }) => item);
  }
}
