import type { JSDOM } from 'jsdom';
import type { DraftLots } from '../../../src/capture/draft/draft-lot.ts';
import { type PageReader, pageReader } from '../../../src/capture/page-reader.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { Dice } from '../dice.ts';
import { LAYOUTS, type Layout, LotBlock, neighbours } from './invented-page.ts';
import { bidUp, PARTS, type Part, putOff, type SiteLot } from './invented-site.ts';
import type { TurnedClock } from './turned-clock.ts';

const CONTEXT = { storeZone: zone('America/Boise') };
const ORIGIN = 'https://sale.example';

/** How a site goes from one lot to another. */
const WAYS = ['load', 'in place', 'new block', 'panels'] as const;

/** What a site does in one visit of a few lots, with all that goes late, in part or wrong. */
export class Visit {
  private readonly document: Document;
  private address = ORIGIN;
  private loadedFrom = ORIGIN;
  private loadedAt = 0;
  private reader: PageReader | undefined;
  private block: LotBlock | undefined;
  private shown: SiteLot | undefined;
  /** Lots that this document has shown: a program may still listen for their bids. */
  private opened: readonly SiteLot[] = [];
  private readonly layout: Layout;
  private readonly clock: TurnedClock;
  private readonly dice: Dice;
  private readonly site: readonly SiteLot[];
  private readonly onRead: (page: DraftLots) => void;
  readings = 0;

  constructor(
    { window }: JSDOM,
    world: { readonly clock: TurnedClock; readonly dice: Dice; readonly site: readonly SiteLot[] },
    onRead: (page: DraftLots) => void,
  ) {
    this.document = window.document;
    this.clock = world.clock;
    this.dice = world.dice;
    this.site = world.site;
    this.onRead = onRead;
    this.layout = world.dice.one(LAYOUTS);
  }

  /** Opens a lot, mostly goes on to another or two, and lets everything that is under way come to its end. */
  async run(): Promise<void> {
    const { dice } = this;
    const lots = dice.shuffled(this.site).slice(0, dice.whole(1, 3));
    for (const [at, lot] of lots.entries()) {
      this.goTo(lot, at === 0 ? 'load' : dice.one(WAYS));
      for (let bids = dice.whole(0, 3); bids > 0; bids--) this.later(dice.whole(0, 9000), () => this.sell());
      await this.clock.runUntil(this.clock.now + dice.one([400, 1200, 3000, 9000, 15_000]), () => false);
    }
    await this.clock.runUntil(this.clock.now + 30_000, () => this.readings === 0);
  }

  private goTo(lot: SiteLot, way: (typeof WAYS)[number]): void {
    const { dice } = this;
    this.shown = lot;
    this.opened = way === 'load' ? [lot] : [...this.opened, lot];
    if (way === 'load' || this.block === undefined) {
      this.load(lot);
      return;
    }
    // The address changes before the parts do, after them, or never.
    const moves = dice.one(['first', 'first', 'last', 'never']);
    if (moves === 'first') this.move(lot);
    const before = this.block;
    if (way === 'in place') this.fillLate(before, lot, { cleared: dice.happens(0.3) });
    else if (way === 'new block') {
      this.block = new LotBlock(this.document, this.layout, PARTS);
      // Some programs show what they had until the new comes; some show nothing.
      const old = this.opened.at(-2);
      const known = dice.shuffled(PARTS).slice(0, dice.whole(1, PARTS.length));
      if (dice.happens(0.4) && old !== undefined) this.block.fill(old, PARTS, false);
      this.block.fill(lot, ['vin', ...known], false);
      before.element.replaceWith(this.block.element);
      this.fillLate(this.block, lot, { cleared: false });
    } else {
      this.block = new LotBlock(this.document, this.layout, PARTS);
      this.block.element.setAttribute('hidden', '');
      this.block.fill(lot, PARTS, false);
      before.element.after(this.block.element);
      const [next, last] = [this.block.element, before.element];
      this.later(dice.whole(0, 500), () => {
        next.removeAttribute('hidden');
        last.setAttribute('hidden', '');
      });
    }
    if (moves === 'last') this.later(dice.whole(200, 4000), () => this.move(lot));
  }

  /** A document of its own, whole at once or filled in late. */
  private load(lot: SiteLot): void {
    const { dice, document } = this;
    this.address = `${ORIGIN}/lot/${lot.number}`;
    this.loadedFrom = this.address;
    this.loadedAt = this.clock.now;
    this.reader = undefined;
    const parts = dice.happens(0.15) ? PARTS.filter((part) => part !== 'price') : PARTS;
    this.block = new LotBlock(document, this.layout, parts);
    const others = neighbours(
      document,
      this.site.filter((one) => one !== lot),
      dice,
    );
    const bodies = dice.happens(0.7) ? [this.block.element, ...others] : [...others, this.block.element];
    document.body.replaceChildren(...bodies);
    if (dice.happens(0.5)) this.block.fill(lot, PARTS, false);
    else {
      if (dice.happens(0.5)) this.block.clear(PARTS, dice);
      this.fillLate(this.block, lot, { cleared: false });
    }
    this.later(dice.whole(0, 200), () => this.open());
  }

  /** Part by part, some late, some never; what a program got wrong it puts right later, or not. */
  private fillLate(block: LotBlock, lot: SiteLot, { cleared }: { cleared: boolean }): void {
    const { dice } = this;
    if (cleared) block.clear(PARTS, dice);
    const at: Partial<Record<Part, number>> = {};
    const together = dice.whole(0, 900);
    for (const part of dice.shuffled(PARTS)) {
      if (dice.happens(0.05)) continue;
      at[part] = dice.happens(0.5) ? together : dice.one([0, 40, 300, 700, 1500, 2500, 5000]);
    }
    const times = new Set(Object.values(at));
    for (const time of times) {
      const parts = PARTS.filter((part) => at[part] === time);
      const inPlace = dice.happens(0.5);
      this.later(time, () => block.fill(lot, parts, inPlace));
    }
  }

  /** Bids come and closes are put off; the page hears of it, and now and then a line that was left open brings another lot's. */
  private sell(): void {
    const { dice, block } = this;
    const lot = dice.happens(0.8) ? this.shown : dice.one(this.opened);
    if (lot === undefined || block === undefined) return;
    if (dice.happens(0.7)) {
      bidUp(lot, dice);
      block.fill(lot, ['price'], dice.happens(0.5));
    } else {
      putOff(lot, dice);
      block.fill(lot, ['closes'], dice.happens(0.5));
    }
  }

  private move(lot: SiteLot): void {
    this.address = `${ORIGIN}/lot/${lot.number}`;
    this.later(100, () => this.open());
    if (this.dice.happens(0.3)) this.later(300, () => this.open());
  }

  /** The browser tells that the page was opened, and it is read as on a site that the user has allowed. */
  private open(): void {
    const { clock } = this;
    // A site that was allowed only now was not watched from the start.
    if (this.reader === undefined && this.dice.happens(0.1)) return;
    const view = {
      location: {
        get href() {
          return '';
        },
      },
      setTimeout: (call: () => void, ms = 0) => clock.setTimeout(call, ms),
      clearTimeout: (id?: number) => clock.clearTimeout(id ?? 0),
    };
    Object.defineProperty(view.location, 'href', { get: () => this.address });
    this.reader = pageReader(this.document, view as unknown as Window, {
      clock: () => clock.now,
      kept: { pointed: [], watch: this.reader?.watch },
      loaded: { from: this.loadedFrom, justNow: clock.now - this.loadedAt < 3000 },
      onPointed: () => undefined,
    });
    this.readings++;
    void this.reader.readSteadily(CONTEXT).then((page) => {
      this.readings--;
      this.onRead(page);
    });
  }

  private later(ms: number, call: () => void): void {
    this.clock.setTimeout(call, ms);
  }
}
