import type { Line } from '../text/lines.ts';
import { nameParts, tidyName, titleParts } from './name-parts.ts';
import { boxesOf, followsBrand, isBrand, isCrumbs, isInHead, isNavigation, isSaleBox } from './page-boxes.ts';
import { CALENDAR_WORDS, SALE_WORDS, shareInHost, VENUE_WORDS } from './sale-name-words.ts';
import { readVehicleName } from './vehicle-name.ts';

/** A name that a page gives its venue or its sale, and how much speaks for it. */
export interface SaleName {
  readonly value: string;
  readonly score: number;
  readonly text: string;
  readonly markup: boolean;
}

export interface SaleNames {
  readonly venues: readonly SaleName[];
  readonly sales: readonly SaleName[];
}

export interface SaleNameSources {
  /** Lines that are no facts of a lot, in page order, those of heads and feet included. */
  readonly lines: readonly Line[];
  readonly title: string;
  readonly host: string;
  readonly meta: ReadonlyMap<string, string>;
  /** Names of organizations and sites in markup. */
  readonly organizations: readonly string[];
  /** Names of sales in markup. */
  readonly events: readonly string[];
  readonly newest: number;
  readonly makes: readonly string[];
  /** Makes and models of the cars on the page, in lower case. */
  readonly cars: readonly string[];
}

/** Everything that speaks for a name as the venue's or the sale's. */
interface Told {
  value: string;
  text: string;
  venue: number;
  sale: number;
  markup: boolean;
  /** Places of the page that say it, so that the same kind counts once. */
  readonly kinds: Set<string>;
}

/** The names of the venue and of the sale that stand on a page outside its lots: in its head, its title, its headings and its foot. */
export function saleNames(sources: SaleNameSources): SaleNames {
  const all = new Map<string, Told>();
  const tell: Tell = (value, kind, venue, sale, text) => {
    const tidy = tidyName(value);
    if (tidy === null || readVehicleName(tidy, sources.newest, sources.makes) !== null) return;
    const isCar = [...sources.cars, ...sources.makes.map((make) => `${make.toLowerCase()} `)].some(
      (car) => car.startsWith(tidy.toLowerCase()) || tidy.toLowerCase().startsWith(car),
    );
    if (isCar) return;
    const key = tidy
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, ' ')
      .trim();
    const told = all.get(key) ?? {
      value: tidy,
      text,
      venue: 0,
      sale: 0,
      markup: kind === 'markup' || kind === 'event',
      kinds: new Set<string>(),
    };
    if (!told.kinds.has(kind)) {
      told.venue += venue;
      told.sale += sale;
      told.kinds.add(kind);
      if (kind !== 'markup' && kind !== 'event' && told.markup)
        Object.assign(told, { value: tidy, text, markup: false });
    }
    all.set(key, told);
  };
  for (const name of ['og:site_name', 'application-name']) {
    const value = sources.meta.get(name);
    if (value !== undefined) tell(value, 'markup', 0.62, 0, `${name}: ${value}`);
  }
  for (const value of sources.organizations) tell(value, 'markup', 0.55, 0, `organization: ${value}`);
  for (const value of sources.events) tell(value, 'event', 0, 0.62, `event: ${value}`);
  titleParts(sources.title).forEach((part, at, parts) => {
    const last = at === parts.length - 1;
    tell(part, 'title', last ? 0.22 : 0, last ? 0 : 0.26, sources.title);
  });
  const top = sources.lines.slice(0, TOP).map((line) => line.order);
  for (const [place, line] of sources.lines.entries()) tellLine(line, top.includes(line.order) ? place : TOP, tell);
  for (const line of sources.lines.slice(-12)) tellFoot(line.text, tell);
  return ranked(all, sources.host);
}

/** Words by which sales are named, or a sentence or markup that says so; a place on the page alone is too little. */
const isSaleLike = ({ value, markup, kinds }: Told): boolean =>
  SALE_WORDS.test(value) || CALENDAR_WORDS.test(value) || markup || kinds.has('in') || kinds.has('event');

type Tell = (value: string, kind: string, venue: number, sale: number, text: string) => void;

function ranked(all: ReadonlyMap<string, Told>, host: string): SaleNames {
  const weighed = [...all.values()].map((told) => {
    const share = shareInHost(told.value, host);
    const isCalendar = CALENDAR_WORDS.test(told.value);
    const venue =
      told.venue +
      (share >= 0.6 ? 0.45 : share >= 0.35 ? 0.25 : 0) +
      (VENUE_WORDS.test(told.value) ? 0.12 : 0) -
      (isCalendar && share < 0.35 ? 0.8 : 0);
    const sale =
      told.sale +
      (SALE_WORDS.test(told.value) ? 0.2 : 0) +
      (isCalendar ? 0.26 : 0) -
      (share >= 0.6 ? 0.5 : share >= 0.35 ? 0.3 : 0);
    return { told, venue: UNNAMED * Math.min(0.95, venue), sale: UNNAMED * Math.min(0.93, sale) };
  });
  // The full name of what is elsewhere called by its first word.
  for (const one of weighed) {
    const short = weighed.find(
      (other) =>
        other !== one &&
        one.told.value.toLowerCase().startsWith(`${other.told.value.toLowerCase()} `) &&
        other.venue >= 0.4,
    );
    if (
      short === undefined ||
      !VENUE_WORDS.test(one.told.value) ||
      SALE_ONLY.test(one.told.value) ||
      /[•|·/:–—]/.test(one.told.value)
    )
      continue;
    one.venue = Math.max(one.venue, Math.min(0.84, short.venue + 0.1));
    short.venue = Math.min(short.venue, one.venue - 0.14);
  }
  const best = weighed.toSorted((a, b) => b.venue - a.venue)[0];
  const named = (score: number, { value, text, markup }: Told): SaleName => ({ value, text, markup, score });
  return {
    venues: weighed.filter((one) => one.venue >= 0.5).map((one) => named(one.venue, one.told)),
    // The venue's own name is not the sale's, nor is a name that only has words of a sale in it.
    sales: weighed
      .filter((one) => one !== best && one.sale >= 0.5 && isSaleLike(one.told))
      .map((one) => named(one.sale, one.told)),
  };
}

/** Words of a sale that no venue is named by. */
const SALE_ONLY = /\b(?:event|special|clearance|round-?up|weekend|days?)\b/i;

/** Where only the place on the page speaks for a name, it is never certain. */
const UNNAMED = 0.88;

const TOP = 12;

function tellLine({ text, element, heading }: Line, place: number, tell: Tell): void {
  if (isCrumbs(element, text)) {
    tellCrumbs(text, tell);
    return;
  }
  if (text.length > 700 || isNavigation(element)) {
    if (isBrand(element)) tell(text, 'brand', 0.4, -0.2, text);
    return;
  }
  tellSentence(text, tell);
  if (text.length > 200) return;
  const [inHead, brand] = [isInHead(element), isBrand(element)];
  const all = boxesOf(element, text).flatMap(nameParts);
  const parts = all.filter((part) => !LOT.test(part));
  const besideLot = parts.length < all.length;
  parts.forEach((part, at) => {
    const first = at === 0;
    if (besideLot && !inHead) tell(part, 'lot', 0, 0.3, text);
    if (brand && first) tell(part, 'brand', 0.4, -0.2, text);
    if (inHead) tell(part, 'head', first ? 0.3 : 0.05, first ? 0 : 0.3, text);
    else if (place < TOP)
      tell(part, 'top', first ? (place < 2 ? 0.34 : 0.1) : 0, first ? saleAtTop(part, place) : 0.34, text);
    if (heading > 0 && heading < 4) tell(part, 'heading', first ? 0.14 : 0, first ? 0.22 : 0.34, text);
    else if (element.tag === 'caption') tell(part, 'heading', first ? 0.1 : 0, 0.45, text);
    if (!brand && isSaleBox(element)) tell(part, 'box', 0, 0.34, text);
    if (first && !brand && followsBrand(element)) tell(part, 'after', 0, 0.34, text);
  });
}

/** The second line of a page may name the sale, if words of a sale are in it. */
const saleAtTop = (part: string, place: number): number =>
  place >= 1 && place < 4 && SALE_WORDS.test(part) ? 0.38 : place < 5 ? 0.2 : 0.12;

/** The trail to a lot: what stands right behind the site's part for its sales is one of them. */
function tellCrumbs(text: string, tell: Tell): void {
  const parts = nameParts(text.replace(/ ?([›»>→]) ?/g, ' $1 '));
  parts.forEach((part, at) => {
    if (LOT.test(part) || SECTION.test(part)) return;
    tell(part, SECTION.test(parts[at - 1] ?? '') ? 'in' : 'crumb', 0.05, 0.6, text);
  });
}

/** A part of the site, and no sale of its own. */
const SECTION =
  /^(?:all |our )?(?:sales|auctions|events|catalogs?|catalogues?|calendar|ventes|encans|subastas|eventos|auktionen)$/i;

const LOT = /^(?:lot|item|run)\b.{0,12}$/i;

/** `Lot 33 of Snake Bend Sales' Thanksgiving Online`, `is offered in our Late November Tender`. */
function tellSentence(text: string, tell: Tell): void {
  const of = OF.exec(text);
  if (of?.[1] !== undefined) tell(of[1], 'of', 0.45, -0.2, text);
  const told = of?.[2] ?? IN.exec(text)?.[1];
  if (told !== undefined && (SALE_WORDS.test(told) || CALENDAR_WORDS.test(told))) tell(told, 'in', 0, 0.5, text);
}

// "Lot 33 of Snake Bend Sales' Thanksgiving Online", "December Decks by Copper Kettle Dealers".
const NAME = String.raw`\p{Lu}[\p{L}\d&-]*(?: (?:\p{Lu}[\p{L}\d&-]*|\d+s?|of|the|and|&|de|du|des)){0,6}`;
const OF = new RegExp(String.raw`\b(?:lot|item|unit) \S{1,10} (?:of|in|from) (${NAME}?)(?:['’]s?|,) (${NAME})`, 'u');
const IN = new RegExp(String.raw`\b(?:in|of|for) (?:our|the|their|this) (${NAME})`, 'u');

function tellFoot(text: string, tell: Tell): void {
  const owned = /(?:©|\(c\)|copyright)\s*(?:\d{4}(?:[–-]\d{2,4})?)?,?\s*(\p{Lu}[^,.|©*]{2,50})/iu.exec(text)?.[1];
  if (owned !== undefined) tell(owned, 'foot', 0.4, -0.1, text);
  const first = /^[^\p{L}]*(\p{Lu}[^,.|*]{3,50})(?:,| [•*|·]| is\b| Inc)/u.exec(text)?.[1];
  if (owned === undefined && first !== undefined && VENUE_WORDS.test(first)) tell(first, 'foot', 0.3, -0.1, text);
}
