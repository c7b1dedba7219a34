import { parseYear } from '../../domain/lot/parse-year.ts';
import { shorten } from '../dom/clean-text.ts';
import type { PageElement } from '../dom/page-tree.ts';
import { Candidates } from '../draft/candidates.ts';
import type { DraftFields, PageNote } from '../draft/draft-lot.ts';
import type { FieldReader, LotSource } from '../fields/field-reader.ts';
import { bareVins, labeledVin } from '../fields/find-vins.ts';
import { readMarkedUpClose, readMomentAttributes } from '../fields/moment-attributes.ts';
import { readClose } from '../fields/read-close.ts';
import { readCondition } from '../fields/read-condition.ts';
import { readLotNumber } from '../fields/read-lot-number.ts';
import { readMiles } from '../fields/read-miles.ts';
import { readMoney, readOffers } from '../fields/read-money.ts';
import { type NameText, nameLines, readNames } from '../fields/read-names.ts';
import { readVins } from '../fields/read-vins.ts';
import { readWords } from '../fields/read-words.ts';
import type { SaleNames } from '../fields/sale-names.ts';
import { readVehicleName } from '../fields/vehicle-name.ts';
import { labelRoles } from '../roles/label-roles.ts';
import { recordPairs } from '../structured/record-pairs.ts';
import { readVehicle } from '../structured/vehicle-readings.ts';
import type { Vehicle } from '../structured/vehicles.ts';
import { isFurniture, type Line } from '../text/lines.ts';
import { pageAddress } from './lot-link.ts';
import { dropWhatIsOver } from './lot-over.ts';
import { describedLine, metaPairs, offerPrices, readRecord, recordOf } from './page-extras.ts';
import type { PageFacts } from './page-facts.ts';
import type { LotPlan } from './plan-lots.ts';
import { readPlaces } from './read-places.ts';
import { vehiclesOf } from './vehicles-of.ts';

export interface LotRead {
  readonly lot: DraftFields;
  /** All that was read, and where. */
  readonly candidates: Candidates;
  readonly heading: string;
  /** The lot's own page, where only markup names it. */
  readonly url: string | null;
  /** Whether there is enough to call it a lot at all. */
  readonly isLot: boolean;
  readonly notes: readonly PageNote[];
}

/** What else is known of the page that a lot is on. */
export interface LotPage {
  readonly plan: LotPlan;
  readonly facts: PageFacts;
  readonly names: SaleNames;
  /** The lot's own page, where the page links to it. */
  readonly link: string | null;
}

/** Each reads what it is named for; those that need another's field come after it. */
const READERS: readonly FieldReader[] = [readMiles, readLotNumber, readWords, readCondition, readMoney, readClose];

/** Reads one lot from what the page says of it. */
export function readLot(at: number, visible: LotSource, { plan, facts, names, link }: LotPage): LotRead {
  const into = new Candidates(facts.budget.candidates);
  const roots = plan.lots[at] ?? [];
  readVins(visible, into);
  const vehicles = vehiclesOf(
    facts.vehicles,
    { roots, plan, lines: visible.lines, extent: visible.extent, link },
    into,
  );
  const marked = vehicles.map((vehicle) => readVehicle(vehicle, facts.thisYear, into));
  const isPage = visible.extent === 'page';
  const extra = isPage ? metaPairs(facts) : [];
  if (isPage) readVins({ ...visible, pairs: extra, lines: [] }, into);
  const record = recordOf(facts, visible, link, into);
  const recorded = record === null ? [] : recordPairs(record);
  if (record !== null && into.of('vin').length === 0)
    into.add('vin', { value: record.vin, from: 'structured-data', text: `vin: ${record.vin}`, score: 0.8 });
  const source: LotSource = {
    ...visible,
    pairs: [...visible.pairs, ...marked.flatMap((one) => one.pairs), ...extra, ...recorded],
    factLines: isPage ? [...visible.factLines, ...describedLine(facts)] : visible.factLines,
  };
  readNames(source, namesFor(source, vehicles, facts), into);
  for (const read of READERS) read(source, into);
  const offers = [...marked.flatMap((one) => one.offers), ...(source.extent === 'page' ? offerPrices(facts) : [])];
  readOffers(offers, source, into);
  const passed = (element: PageElement) =>
    element.showing === 'hidden' || plan.skip.has(element) || isFurniture(element);
  readMomentAttributes(roots, passed, source, into);
  for (const close of marked.flatMap((one) => one.closes))
    readMarkedUpClose(close.value, close.text, close.own, source, into);
  if (record !== null) readRecord(record, facts, source, into);
  dropWhatIsOver(source.lines, source.extent, into);
  nameSale(names, into);
  for (const note of readPlaces(at, facts, source, plan, into)) into.note(note);
  const lot = into.settle();
  return {
    lot,
    candidates: into,
    url: source.extent === 'card' ? ownPage(vehicles, facts) : null,
    heading: headingOf(source.lines, facts, source.extent),
    isLot: isLot(lot, source, vehicles, into),
    notes: source.extent === 'page' ? into.notes : into.notes.filter(({ reason }) => reason !== 'lot-over'),
  };
}

/** The address that markup gives the one vehicle of a card, on the same site. */
function ownPage([vehicle, other]: readonly Vehicle[], { pageUrl, base }: PageFacts): string | null {
  const url = vehicle === undefined || other !== undefined || vehicle.url === '' ? null : URL.parse(vehicle.url, base);
  return url !== null && url.origin === new URL(pageUrl).origin ? pageAddress(url.href) : null;
}

/** What the page says outside its lots of the venue and the sale, where the lot itself does not say. */
function nameSale({ venues, sales }: SaleNames, into: Candidates): void {
  const own = { venueName: (into.best('venueName')?.score ?? 0) > 0.7, sale: (into.best('sale')?.score ?? 0) > 0.7 };
  for (const [field, found] of [
    ['venueName', venues],
    ['sale', sales],
  ] as const) {
    if (own[field]) continue;
    for (const { value, score, text, markup } of found) {
      into.add(field, { value, from: markup ? 'structured-data' : 'page-text', text, score });
    }
  }
}

function namesFor(source: LotSource, vehicles: readonly Vehicle[], facts: PageFacts): readonly NameText[] {
  const marked = vehicles.map(
    (vehicle): NameText => ({ text: vehicle.name, from: 'structured-data', score: 0.86, node: null }),
  );
  const seen = nameLines(source.lines, facts.thisYear + 2, facts.makes);
  const labeled = source.pairs.flatMap((pair): readonly NameText[] => {
    const names =
      pair.how === 'attribute' || /\b(?:unit|vehicle|description|car|truck|what it is|item)\b/i.test(pair.label);
    if (!names) return [];
    const [first = '', second = ''] = pair.value.split('\n');
    const whole = readVehicleName(first, facts.thisYear + 2, facts.makes)?.model === '' ? `${first} ${second}` : first;
    return [{ text: withYear(whole, source, facts), from: pair.from, score: 0.86, node: pair.node }];
  });
  if (source.extent === 'card') return [...marked, ...seen, ...labeled];
  const title: NameText = { text: facts.tree.title, from: 'page-text', score: 0.72, node: null };
  const meta = ['og:title', 'twitter:title'].map(
    (name): NameText => ({ text: facts.meta.get(name) ?? '', from: 'structured-data', score: 0.74, node: null }),
  );
  return [...marked, ...seen, ...labeled, title, ...meta];
}

/** A name whose year stands in a column of its own, or is cut to two figures. */
function withYear(name: string, { pairs }: LotSource, { thisYear, makes }: PageFacts): string {
  const short = /^(\d\d) (?=\p{Lu}{2})/u.exec(name)?.[1];
  if (short !== undefined) return `’${name}`;
  if (readVehicleName(name, thisYear + 2, makes) !== null || !/^\p{Lu}[^\d$:]{1,}/u.test(name)) return name;
  const years = pairs.flatMap((pair) => {
    const year =
      pair.how === 'head' && labelRoles(pair.label).fact.has('year') ? parseYear(pair.value, thisYear) : null;
    return year?.ok === true ? [year.value] : [];
  });
  return new Set(years).size === 1 ? `${years[0]} ${name}` : name;
}

function headingOf(lines: readonly Line[], facts: PageFacts, extent: 'page' | 'card'): string {
  const heading = lines.find((line) => line.heading > 0) ?? (extent === 'card' ? lines[0] : undefined);
  return shorten(heading?.text ?? facts.tree.title, 200);
}

/** Whether the VIN stands by itself somewhere, and not only in running text, which may be about any car. */
function hasVinApart({ vin }: DraftFields, { lines, pairs }: LotSource): boolean {
  if (vin === undefined || vin.readings.some((reading) => reading.from !== 'page-text')) return vin !== undefined;
  if (vin.readings.every((reading) => reading.sure === 'doubtful')) return false;
  const saying = lines.filter((line) => bareVins(line.text).length > 0);
  return (
    saying.some((line) => !line.prose) ||
    pairs.some((pair) => labelRoles(pair.label).fact.has('vin') && !pair.prose && labeledVin(pair.value) !== null)
  );
}

/** A VIN makes a lot. Without one, a car's name and something that only lots have; that it is marked up as offered is one. */
function isLot(fields: DraftFields, source: LotSource, vehicles: readonly Vehicle[], read: Candidates): boolean {
  if (hasVinApart(fields, source)) return true;
  // What the user pointed at is a lot's, whatever else the page says of it.
  if (Object.values(fields).some((field) => field?.readings[0]?.from === 'pointed')) return true;
  if (fields.year === undefined) return false;
  // Told in sentences: its VIN, its miles, and what is bid or when it closes.
  const told = [fields.close, fields.priceNow, fields.nextBid].some((field) => field !== undefined);
  if (fields.vin?.settled === true && fields.miles !== undefined && told) return true;
  // A car that is only told of in running text may be any.
  if ((read.best('year')?.score ?? 0) < 0.7) return false;
  const more = [
    fields.lotNumber,
    fields.runNumber,
    fields.priceNow,
    fields.nextBid,
    fields.buyNow,
    fields.close,
    fields.miles,
    fields.vin,
  ];
  const offered = vehicles.some(({ offers }) => offers.length > 0) ? 1 : 0;
  return more.filter((field) => field !== undefined).length + offered >= (source.extent === 'card' ? 1 : 2);
}
