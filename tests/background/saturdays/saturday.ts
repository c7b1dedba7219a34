import type { LotAct } from '../../../src/acts/act.ts';
import type { Notice } from '../../../src/browser/notifications.ts';
import type { LotFacts, LotId } from '../../../src/domain/lot/lot.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { estimateSchema } from '../../../src/domain/money/estimate.ts';
import { alertRulesSchema } from '../../../src/domain/setup/alert-rules.ts';
import { wholeSetup } from '../../../src/domain/setup/starting-setup.ts';
import { rushSchema, storeSchema } from '../../../src/domain/setup/store.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import { maxBidOf } from '../../../src/views/lots/bids.ts';
import { doLotAct } from '../../../src/views/lots/do-lot-act.ts';
import { standingsUnder } from '../../../src/views/lots/standing.ts';
import { freshBrowser, value } from '../../store/open-test-store.ts';
import { InventedBrowser } from '../invented-browser.ts';
import { BOISE, closeAt, VENUE, YARD } from '../invented-saturday.ts';
import type { WrittenLot } from './script.ts';

/** Friday, five in the afternoon at the store. */
export const FRIDAY = Date.parse('2026-12-05T00:00:00Z');
export const MIDNIGHT = Date.parse('2026-12-05T07:00:00Z');
export const EIGHT_PM = Date.parse('2026-12-06T03:00:00Z');

/** A notice of that Saturday. */
export interface Shown {
  readonly at: number;
  readonly notice: Notice;
  /** The lots that it names, and of these those that wanted a bid then. */
  readonly names: readonly string[];
  readonly wanting: readonly string[];
}

/** The invented store's Saturday, minute by minute: who is there, what is noted, what appears on the screen. */
export class Saturday {
  readonly browser = new InventedBrowser(FRIDAY);
  readonly shown: Shown[] = [];
  /** When a lot's bid was last brought to its number, for as long as it stands there. */
  readonly answered = new Map<string, number>();
  readonly #events: { readonly at: number; readonly run: () => Promise<void> }[] = [];
  readonly #ids = new Map<string, LotId>();
  #looked = 0;
  /** The browser is closed until then. */
  closedUntil: number | null = null;
  /** Called with each notice as it appears. */
  readonly onNotice: (shown: Shown, saturday: Saturday) => void;
  readonly lots: readonly WrittenLot[];

  constructor(lots: readonly WrittenLot[], onNotice: (shown: Shown, saturday: Saturday) => void) {
    this.lots = lots;
    this.onNotice = onNotice;
  }

  static async begin(lots: readonly WrittenLot[], onNotice: Saturday['onNotice']): Promise<Saturday> {
    freshBrowser();
    const saturday = new Saturday(lots, onNotice);
    const store = await saturday.browser.store();
    value(
      await store.saveSetup({
        store: storeSchema.parse({ name: 'Cottonwood Truck & Van', zone: BOISE }),
        rush: rushSchema.parse({ weekly: [{ weekday: 'sat', from: '10:00', to: '17:00' }] }),
        alerts: alertRulesSchema.parse({}),
        venues: [YARD],
      }),
    );
    const facts = await retailFor(saturday, lots);
    const added = value(
      await store.addLots(
        'typed',
        facts.map((one) => ({ facts: one })),
      ),
    );
    store.close();
    for (const [i, lot] of lots.entries()) {
      const id = added.lots[i];
      if (id !== undefined) saturday.#ids.set(lot.lot, id);
      for (const [at, price] of lot.prices)
        saturday.at(Date.parse(at), async () => {
          await saturday.act(lot.lot, { do: 'price', cents: dollars(price) });
        });
    }
    return saturday;
  }

  at(time: number, run: () => Promise<void>): void {
    this.#events.push({ at: time, run });
    this.#events.sort((a, b) => a.at - b.at);
  }

  /** What somebody does on a screen, after which reminders are planned again as they are there. */
  async act(lot: string, act: LotAct): Promise<string> {
    const store = await this.browser.store();
    const state = await store.lot(this.idOf(lot));
    if (state === null) throw new Error(`${lot} is not on the list`);
    const setup = wholeSetup(await store.setup(), BOISE);
    const done = await doLotAct(store, state, act, {
      setup,
      standings: standingsUnder(setup),
      now: this.browser.wallClock(),
    });
    store.close();
    if (this.closedUntil === null) await this.browser.wake();
    return done.as;
  }

  /** Takes back what was last said of a lot. */
  async undo(lot: string): Promise<void> {
    const store = await this.browser.store();
    const last = (await store.historyOfLot(this.idOf(lot))).at(-1);
    if (last !== undefined) value(await store.undo(last.id));
    store.close();
    this.answered.delete(lot);
    await this.browser.wake();
  }

  /** Brings the bid to the number, as a notice asks, and says so. */
  async place(lot: string): Promise<void> {
    const { maxBid } = this.written(lot);
    const done = await this.act(lot, { do: 'bid', how: 'proxy', cents: dollars(maxBid), offered: true });
    if (done === 'kept') this.answered.set(lot, this.browser.time);
  }

  written(lot: string): WrittenLot {
    const found = this.lots.find((one) => one.lot === lot);
    if (found === undefined) throw new Error(`${lot} is not in the script`);
    return found;
  }

  idOf(lot: string): LotId {
    const id = this.#ids.get(lot);
    if (id === undefined) throw new Error(`${lot} did not come in`);
    return id;
  }

  /** Whether somebody should still bid on a lot. */
  async wants(lot: string): Promise<boolean> {
    const store = await this.browser.store();
    const state = await store.lot(this.idOf(lot));
    const setup = wholeSetup(await store.setup(), BOISE);
    store.close();
    const open = Date.parse(this.written(lot).close) > this.browser.time && state?.sale?.result === undefined;
    return state !== null && open && standingsUnder(setup).bids.open(state).loud;
  }

  async play(): Promise<void> {
    await this.browser.wake();
    for (let minute = FRIDAY; minute <= EIGHT_PM; minute += MINUTE) {
      if (this.closedUntil !== null && minute >= this.closedUntil) {
        const until = this.closedUntil;
        this.closedUntil = null;
        await this.browser.closedUntil(until, true);
      } else if (this.closedUntil === null) {
        await this.browser.run(minute);
        // The standing alarm, less often than it rings, because it begins anew with each stretch.
        if (minute % (10 * MINUTE) === 0) await this.browser.wake();
      }
      this.browser.time = Math.max(this.browser.time, minute);
      await this.#look();
      for (;;) {
        const [event] = this.#events;
        if (event === undefined || event.at > minute) break;
        this.#events.shift();
        await event.run();
        await this.#look();
      }
    }
  }

  async #look(): Promise<void> {
    const fresh = this.browser.appeared.slice(this.#looked);
    this.#looked = this.browser.appeared.length;
    for (const { at, notice } of fresh) {
      const text = `${notice.title}\n${notice.body}`;
      const names = this.lots.filter(({ lot }) => text.includes(`Hauler ${lot}`)).map(({ lot }) => lot);
      const wanting: string[] = [];
      for (const lot of names) if (await this.wants(lot)) wanting.push(lot);
      const shown = { at, notice, names, wanting };
      this.shown.push(shown);
      this.onNotice(shown, this);
    }
  }
}

export const dollars = (whole: number): Cents => cents(whole * 100);

/** The facts of the lots, with the retail from which exactly the max bid of the script follows. */
async function retailFor(saturday: Saturday, lots: readonly WrittenLot[]): Promise<LotFacts[]> {
  const store = await saturday.browser.store();
  const setup = wholeSetup(await store.setup(), BOISE);
  store.close();
  const { of } = standingsUnder(setup);
  return lots.map(({ lot, close, maxBid, proxy }) => {
    const factsFor = (retail: number): LotFacts => ({
      model: `Hauler ${lot}`,
      lotNumber: lot,
      venueId: VENUE,
      close: closeAt(Date.parse(close)),
      retail: estimateSchema.parse({ likely: retail }),
      ...(proxy !== null && { proxy: dollars(proxy) }),
    });
    const wanted = dollars(maxBid);
    let retail = wanted + 250_000;
    for (let turn = 0; turn < 40; turn += 1) {
      const facts = factsFor(retail);
      const found = maxBidOf(of({ id: 'x', facts, evidence: {}, addedAt: 0, changedAt: 0 } as never)) ?? 0;
      if (found === wanted) return facts;
      retail += Math.max(wanted - found, found < wanted ? 5_000 : Number.NEGATIVE_INFINITY);
    }
    throw new Error(`no retail gives ${lot} its max bid`);
  });
}
