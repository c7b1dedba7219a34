import { Candidates } from '../draft/candidates.ts';
import type { DraftFields, PageNote } from '../draft/draft-lot.ts';
import { bareVins, labelledVin } from '../fields/find-vins.ts';
import { readClose } from '../fields/read-close.ts';
import { readLotNumber } from '../fields/read-lot-number.ts';
import { readMiles } from '../fields/read-miles.ts';
import { type OfferPrice, readMoney } from '../fields/read-money.ts';
import { type NameText, nameLines, readNames } from '../fields/read-names.ts';
import { readVins } from '../fields/read-vins.ts';
import { readWords } from '../fields/read-words.ts';
import { readVehicle } from '../structured/vehicle-readings.ts';
import type { Vehicle } from '../structured/vehicles.ts';
import { shorten } from '../text/clean-text.ts';
import { type Line, linesOf, type Scope } from '../text/lines.ts';
import type { Pair } from '../text/pair.ts';
import { pairsOf } from '../text/pairs.ts';
import { dropWhatIsOver } from './lot-over.ts';
import { offerPrices, readRecord, siteName } from './page-extras.ts';
import type { PageFacts } from './page-facts.ts';
import { readPlaces } from './read-places.ts';
import { vehiclesOf } from './vehicles-of.ts';

export interface LotRead {
  readonly lot: DraftFields;
  /** All that was read, and where. */
  readonly candidates: Candidates;
  readonly heading: string;
  /** Whether there is enough to call it a lot at all. */
  readonly isLot: boolean;
  readonly notes: readonly PageNote[];
}

/** What else there is to know of the page: what holds for all of it, and the lines that are in no lot of a list. */
export interface Surroundings {
  readonly facts: PageFacts;
  readonly around: readonly Line[];
  readonly aroundPairs: readonly Pair[];
}

/** Reads one lot from its part of the page: the whole page, or a card of a list. */
export function readLot(scope: Scope, extent: 'page' | 'card', { facts, around, aroundPairs }: Surroundings): LotRead {
  const into = new Candidates(facts.budget.candidates);
  const lines = linesOf(scope);
  const visible = pairsOf(scope, lines);
  const notes: PageNote[] = [...readVins(visible, lines, scope, into)];
  const vehicles = vehiclesOf(facts.vehicles, scope, extent, into);
  const marked = vehicles.map((vehicle) => readVehicle(vehicle, facts.thisYear, into));
  const pairs: readonly Pair[] = [...visible, ...marked.flatMap((one) => one.pairs)];
  readNames(pairs, namesFor(lines, vehicles, extent, facts), facts, into);
  readMiles(pairs, lines, facts.decimal, into);
  readLotNumber(pairs, into);
  readWords(pairs, lines, into);
  const offers: readonly OfferPrice[] = [...marked.flatMap((one) => one.offers), ...offerPrices(facts, extent)];
  notes.push(...readMoney({ pairs, lines, offers, decimal: facts.decimal }, into));
  const markedUp = marked.flatMap((one) => one.closes);
  readClose({ pairs, lines, scope, markedUp }, facts.clock, into);
  if (extent === 'card') readShared(around, aroundPairs, facts, into);
  readRecord(facts, into);
  const over = dropWhatIsOver(lines, into);
  if (extent === 'page') notes.push(...over);
  if (extent === 'page') notes.push(...readPlaces(facts, lines, scope.skip, into));
  if (extent === 'page') siteName(facts, into);
  const lot = into.settle();
  return {
    lot,
    candidates: into,
    heading: headingOf(lines, facts, extent),
    isLot: isLot(lot, extent, vehicles, hasVinApart(visible, lines, lot)),
    notes,
  };
}

/** A closing time or a sale that the page states once for all its lots. */
function readShared(around: readonly Line[], pairs: readonly Pair[], facts: PageFacts, into: Candidates): void {
  readWords(
    pairs.filter((pair) => pair.meaning === 'sale' || pair.meaning === 'venueName'),
    [],
    into,
  );
  if (into.of('close').length > 0) return;
  const everywhere: Scope = { roots: [], skip: new Set() };
  const shared = around.filter((line) => /\b(?:all lots|sale|auction|bidding|every lot)\b/i.test(line.text));
  readClose({ pairs: [], lines: shared, scope: everywhere, markedUp: [] }, facts.clock, into);
}

function namesFor(
  lines: readonly Line[],
  vehicles: readonly Vehicle[],
  extent: 'page' | 'card',
  facts: PageFacts,
): readonly NameText[] {
  const marked = vehicles.map((vehicle): NameText => ({ text: vehicle.name, from: 'structured-data' }));
  const seen = nameLines(lines, facts.thisYear + 2);
  if (extent === 'card' || seen.length > 0) return [...marked, ...seen];
  const ogTitle = facts.openGraph.get('og:title') ?? '';
  return [...marked, { text: facts.tree.title, from: 'page-text' }, { text: ogTitle, from: 'structured-data' }];
}

function headingOf(lines: readonly Line[], facts: PageFacts, extent: 'page' | 'card'): string {
  const heading = lines.find((line) => line.heading > 0) ?? (extent === 'card' ? lines[0] : undefined);
  return shorten(heading?.text ?? facts.tree.title, 200);
}

/** Whether the VIN stands by itself somewhere, and not only in running text, which may be about any car. */
function hasVinApart(pairs: readonly Pair[], lines: readonly Line[], { vin }: DraftFields): boolean {
  if (vin === undefined || vin.readings.some((reading) => reading.from !== 'page-text')) return vin !== undefined;
  const saying = lines.filter((line) => bareVins(line.text).length > 0);
  return (
    saying.length === 0 ||
    saying.some((line) => !line.prose) ||
    pairs.some((pair) => pair.meaning === 'vin' && !pair.prose && labelledVin(pair.value) !== null)
  );
}

/** A VIN makes a lot. Without one, a car's name and something that only lots have; that it is marked up as offered is one. */
function isLot(fields: DraftFields, extent: 'page' | 'card', vehicles: readonly Vehicle[], hasVin: boolean): boolean {
  if (hasVin) return true;
  if (fields.year === undefined) return false;
  const more = [
    fields.lotNumber,
    fields.runNumber,
    fields.priceNow,
    fields.nextBid,
    fields.buyNow,
    fields.close,
    fields.miles,
  ];
  const offered = vehicles.some(({ offers }) => offers.length > 0) ? 1 : 0;
  return more.filter((field) => field !== undefined).length + offered >= (extent === 'card' ? 1 : 2);
}
