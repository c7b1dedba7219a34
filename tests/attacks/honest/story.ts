import { demoSetup } from '../../../src/demo/demo-setup.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { localDateSchema } from '../../../src/domain/time/local-date.ts';
import type { Happening } from '../../../src/journal/happening.ts';
import { signedHeadSchema } from '../../../src/journal/signed-head.ts';
import { subjectOfLot } from '../../../src/journal/subject.ts';
import type { Store } from '../../../src/store/store.ts';
import { carFromFile, carFromPage, dollars, EVIDENCE } from './cars.ts';
import { Clock, carry, computer, freshMachine, only, seededBytes, signedElsewhere, value } from './machine.ts';
import { png } from './pictures.ts';
import { stamped } from './time-office.ts';

export interface Story {
  readonly buyer: Store;
  readonly manager: Store;
  readonly bookkeeper: Store;
  /** Came in alone, was won, disputed. */
  readonly single: LotId;
  /** The third of six rows of a file; lost. */
  readonly fromBatch: LotId;
  /** Heads noted on the way: by a name, the line to be noted down. */
  readonly noted: Readonly<Record<string, string>>;
  /** By device, signatures that its key made on the way. */
  readonly signed: Readonly<Record<string, Signed>>;
}

/** True signatures by a device's own key, in hexadecimal, that do not belong to the end of its chain. */
export interface Signed {
  /** Over an earlier head. */
  readonly earlier: string;
  /** Over something else. */
  readonly elsewhere: string;
}

/**
 * Thursday to Monday at the invented dealer: the buyer collects lots and places proxies, the manager watches the closes on
 * Saturday, the bookkeeper follows up. Some sixty entries on three computers, which give each other their backups.
 * @param files whether files are kept too
 */
export async function tellStory({ files }: { readonly files: boolean }): Promise<Story> {
  freshMachine();
  const clock = new Clock(Date.UTC(2026, 10, 12, 15));
  const buyer = await computer(clock, 'buyer');
  // Seven minutes slow: a clock that is wrong is no break in a chain.
  const manager = await computer(clock, 'manager', -7);
  const bookkeeper = await computer(clock, 'bookkeeper');
  const noted: Record<string, string> = {};
  const signed: Record<string, Signed> = {};
  const note = async (name: string, store: Store) => {
    const { device, heads } = await store.about();
    const own = only(heads.filter((head) => head.device === device));
    noted[name] = `${own.device}:${own.sequence}:${own.hash}`;
    if (!(device in signed)) signed[device] = await signedOnTheWay(store, name.split('-')[0] ?? '');
  };
  const tell = async (store: Store, lot: LotId, happening: Happening) =>
    only(value(await store.append([{ subject: subjectOfLot(lot), happening }])));
  const noise = seededBytes('pictures');
  const keep = async (store: Store, lot: LotId, name: string, bytes: Uint8Array<ArrayBuffer>, mediaType: string) => {
    if (!files) return undefined;
    return value(await store.keepAttachment(lot, { bytes, name, mediaType, about: 'page-picture' }));
  };

  // Thursday, the buyer.
  value(await buyer.saveSetup(demoSetup(localDateSchema.parse('2026-11-12'))));
  clock.later(12);
  const rows = [0, 1, 2, 3, 4, 5].map((i) => ({ facts: carFromFile(i, clock) }));
  const batch = value(await buyer.addLots('file', rows)).lots;
  const [first, second, fromBatch, fourth] = batch;
  if (first === undefined || second === undefined || fromBatch === undefined || fourth === undefined)
    throw new Error('the file has six rows');
  clock.later(9);
  const single = only(value(await buyer.addLots('page', [{ facts: carFromPage(clock), evidence: EVIDENCE }])).lots);
  clock.later(4);
  value(
    await buyer.changeLot(single, {
      set: {
        priceNow: dollars(9200),
        notes: 'Listing says “one owner” 🚚; asks for é and ß; </pre><pre id="headroom-evidence">',
      },
    }),
  );
  clock.later(3);
  value(await buyer.changeLot(fromBatch, { set: { priceNow: dollars(11_000), retail: { likely: dollars(19_400) } } }));
  value(await buyer.changeLot(first, { set: { priceNow: dollars(7400) } }));
  clock.later(30);
  value(await buyer.changeLot(single, { set: { retail: { low: dollars(17_000), likely: dollars(18_600) } } }));
  const shown = await keep(buyer, single, 'page at the proxy.png', png(24, 16, noise), 'image/png');
  value(
    await buyer.noteBid(single, {
      action: 'proxy-placed',
      cents: dollars(11_500),
      at: clock.at(-1),
      page: { url: 'https://sale.example/lots/4417', title: 'Lot 4417 <b>Larkspur</b> & “Hauler”' },
      ...(shown && { picture: shown.hash }),
    }),
  );
  value(await buyer.changeLot(single, { set: { proxy: dollars(11_500) } }));
  clock.later(6);
  value(await buyer.noteBid(fromBatch, { action: 'proxy-placed', cents: dollars(12_250), at: clock.at(-1) }));
  await keep(buyer, fromBatch, 'row of the list.png', png(20, 14, noise), 'image/png');
  value(await buyer.noteBid(first, { action: 'proxy-placed', cents: dollars(8000), at: clock.at(-2) }));
  await keep(buyer, second, 'walkaround.png', png(640, 560, noise), 'image/png');
  await note('buyer-thursday', buyer);
  await carry(buyer, manager);

  // Friday, the buyer goes on; a wrong entry is taken back.
  clock.later(20 * 60);
  const slip = only(
    value(await buyer.noteBid(single, { action: 'proxy-raised', cents: dollars(21_500), at: clock.at(-1) })),
  );
  clock.later(1);
  value(await buyer.undo(slip.id));
  value(await buyer.noteBid(single, { action: 'proxy-raised', cents: dollars(12_500), at: clock.at(-1) }));
  value(await buyer.noteBid(single, { action: 'confirmation-seen', cents: dollars(12_500), at: clock.at(0) }));
  value(await buyer.changeLot(second, { set: { notes: 'Ask about the lift gate' } }));
  value(await buyer.dropLot(fourth));
  clock.later(15);
  const wrongPicture = await keep(buyer, single, 'wrong lot.png', png(12, 12, noise), 'image/png');
  if (wrongPicture) value(await buyer.undo(only(wrongPicture.entries).id));
  value(await buyer.noteBid(fromBatch, { action: 'proxy-raised', cents: dollars(12_750), at: clock.at(0) }));
  for (const [i, lot] of [first, second, single, first, second, single, fromBatch].entries()) {
    clock.later(4);
    value(await buyer.changeLot(lot, { set: { priceNow: dollars(9500 + 50 * i) } }));
  }
  await note('buyer-friday', buyer);
  await stamped(buyer, noted['buyer-friday'] ?? '');
  await carry(buyer, manager);

  // Saturday, the manager.
  clock.later(22 * 60);
  value(await manager.recordShown(['digest 2026-11-14', `close ${single}`]));
  await tell(manager, single, { kind: 'calls-put-off', until: clock.at(10) });
  clock.later(11);
  await tell(manager, single, { kind: 'close-extended', from: clock.at(1), minutes: 3 });
  value(await manager.noteBid(single, { action: 'live-bid', cents: dollars(12_900), at: clock.at(0) }));
  await keep(manager, single, 'page at the close.png', png(30, 20, noise), 'image/png');
  clock.later(3);
  value(await manager.noteBid(single, { action: 'result-seen', cents: dollars(12_900), at: clock.at(0) }));
  value(await manager.noteResult(single, { result: { ended: 'lost' }, at: clock.at(0) }));
  clock.later(2);
  value(
    await manager.noteResult(single, {
      result: { ended: 'won', hammerCents: dollars(12_900) },
      at: clock.at(-2),
      bidder: 'manager',
      by: 'live',
      maxBidCents: dollars(13_100),
    }),
  );
  await note('manager-saturday', manager);
  clock.later(8);
  value(
    await manager.noteResult(fromBatch, {
      result: { ended: 'lost', hammerCents: dollars(13_400) },
      at: clock.at(-1),
      by: 'proxy',
      maxBidCents: dollars(12_750),
    }),
  );
  value(await manager.noteResult(first, { result: { ended: 'won', hammerCents: dollars(7900) }, at: clock.at(-1) }));
  value(
    await manager.noteResult(second, { result: { ended: 'not-sold', highCents: dollars(14_000) }, at: clock.at(-3) }),
  );
  await keep(
    manager,
    single,
    'message from the sale.txt',
    text('You are the high bidder on lot 4417 at 12,900.'),
    'text/plain',
  );
  value(await manager.recordShown([`result ${single}`, `result ${fromBatch}`]));
  await carry(manager, buyer);
  await carry(buyer, bookkeeper);

  // Monday, the bookkeeper, and the dispute.
  clock.later(46 * 60);
  await tell(bookkeeper, single, {
    kind: 'step-noted',
    step: 'pay',
    done: true,
    at: clock.at(-5),
    cents: dollars(13_495),
  });
  value(
    await bookkeeper.book({
      kind: 'costs-booked',
      date: localDateSchema.parse('2026-11-16'),
      payee: 'Saguaro Sale Yard',
      paid: 'owed',
      document: { number: 'S-20881' },
      lines: [
        { lot: single, cost: 'fee', label: 'Buy fee', cents: dollars(595) },
        { lot: first, cost: 'fee', label: 'Buy fee', cents: dollars(420) },
      ],
    }),
  );
  await tell(bookkeeper, single, { kind: 'step-noted', step: 'deliver', done: true, at: clock.at(-1) });
  await tell(bookkeeper, first, {
    kind: 'step-noted',
    step: 'pay',
    done: true,
    at: clock.at(-1),
    cents: dollars(8320),
  });
  clock.later(70);
  const dispute = await tell(bookkeeper, single, {
    kind: 'dispute-opened',
    opened: {
      side: 'ours',
      reason: 'wrong-description',
      words: 'Listed as four-wheel drive; it is not.',
      askedCents: dollars(2600),
      at: clock.at(-10),
      needs: ['Photo of the front axle', 'Copy of the listing'],
    },
  });
  const axle = await keep(bookkeeper, single, 'front axle.png', png(26, 18, noise), 'image/png');
  await tell(bookkeeper, single, {
    kind: 'dispute-stepped',
    dispute: dispute.id,
    step: { what: 'got', at: clock.at(0), need: 'Photo of the front axle', ...(axle && { files: [axle.hash] }) },
  });
  await tell(bookkeeper, single, {
    kind: 'dispute-stepped',
    dispute: dispute.id,
    step: { what: 'told', at: clock.at(1), who: 'arbitration desk', words: 'Sent with the photo.' },
  });
  await carry(bookkeeper, buyer);
  await carry(bookkeeper, manager);
  clock.later(120);
  await tell(buyer, single, {
    kind: 'dispute-stepped',
    dispute: dispute.id,
    step: { what: 'offer', at: clock.at(-3), cents: dollars(1500), who: 'arbitration desk' },
  });
  value(await buyer.changeLot(first, { set: { notes: 'Sell it by the month’s end' } }));
  await tell(buyer, single, {
    kind: 'dispute-changed',
    dispute: dispute.id,
    set: { askedCents: dollars(2200) },
    clear: [],
  });
  clock.later(45);
  await tell(manager, single, { kind: 'handed-over', to: 'buyer' });
  await tell(manager, single, {
    kind: 'dispute-stepped',
    dispute: dispute.id,
    step: { what: 'talk', at: clock.at(0), words: 'They meet us at 2,000.' },
  });
  await carry(manager, bookkeeper);
  await carry(buyer, bookkeeper);
  clock.later(30);
  await tell(bookkeeper, single, {
    kind: 'dispute-closed',
    dispute: dispute.id,
    outcome: { ended: 'price-adjusted', at: clock.at(-1), cents: dollars(2000), words: 'Credited on the next bill.' },
  });
  value(
    await bookkeeper.book({
      kind: 'settlement-booked',
      dispute: dispute.id,
      lot: single,
      date: localDateSchema.parse('2026-11-16'),
      label: 'Price adjusted',
      cents: dollars(-2000),
    }),
  );
  value(await bookkeeper.changeLot(fromBatch, { set: { notes: 'Offered again next week' } }));
  await carry(bookkeeper, buyer);
  await carry(bookkeeper, manager);
  await carry(buyer, manager);
  await carry(manager, buyer);
  await note('buyer-last', buyer);
  await note('manager-last', manager);
  await note('bookkeeper-last', bookkeeper);
  // Each gives the buyer its end, signed.
  await carry(bookkeeper, buyer);
  await carry(manager, buyer);
  return { buyer, manager, bookkeeper, single, fromBatch, noted, signed };
}

/** Signatures as they are now, which is earlier than the end. */
async function signedOnTheWay(store: Store, database: string): Promise<Signed> {
  const { device } = await store.about();
  const { heads } = (await store.backup()).header;
  const own = heads.find((head) => head.device === device);
  const earlier = signedHeadSchema.safeParse(own).data?.signed?.signature ?? '';
  return { earlier, elsewhere: await signedElsewhere(database) };
}

const text = (words: string) => new Uint8Array(new TextEncoder().encode(words));
