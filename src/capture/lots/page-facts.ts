import type { DecimalMark } from '../../domain/money/written-number.ts';
import type { PointedPlace } from '../../domain/setup/site.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { wallClock } from '../../domain/time/wall-clock.ts';
import type { Budget } from '../budget.ts';
import type { PageTree } from '../dom/page-tree.ts';
import type { ClockContext } from '../fields/field-reader.ts';
import { saysOtherCurrency } from '../fields/read-money.ts';
import { statedZone } from '../fields/shared-time.ts';
import type { ReadContext } from '../read-context.ts';
import { labelRoles } from '../roles/label-roles.ts';
import { readJsonLd } from '../structured/json-ld.ts';
import { readMeta } from '../structured/meta-tags.ts';
import { readMicrodata } from '../structured/microdata.ts';
import { type PageRecord, readPageJson } from '../structured/page-json.ts';
import { readRdfa } from '../structured/rdfa.ts';
import { joinThings, onlyText, type Thing } from '../structured/thing.ts';
import { type Vehicle, vehiclesIn } from '../structured/vehicles.ts';
import { type Line, linesOf } from '../text/lines.ts';
import { numberStyle } from '../text/number-style.ts';
import type { Pair } from '../text/pair.ts';
import { pairsOf } from '../text/pairs.ts';
import type { TableModel } from '../text/table-model.ts';
import { baseOf } from './lot-link.ts';
import { type LotMark, lotMarks } from './lot-marks.ts';
import { attributeScripts } from './page-extras.ts';

/** More marks than this are not weighed: a page of so many lots is cut anyway. */
const MOST_MARKS = 3000;

/** What holds for the whole page, gathered once for all its lots. */
export interface PageFacts {
  readonly tree: PageTree;
  readonly pageUrl: string;
  readonly base: string;
  readonly clock: ClockContext;
  readonly thisYear: number;
  readonly makes: readonly string[];
  readonly places: readonly PointedPlace[];
  readonly things: readonly Thing[];
  readonly vehicles: readonly Vehicle[];
  /** What the page says of itself in its head, by property. */
  readonly meta: ReadonlyMap<string, string>;
  readonly records: readonly PageRecord[];
  readonly decimal: DecimalMark | undefined;
  /** The page says somewhere that its dollars are not those of the United States. */
  readonly otherCurrency: boolean;
  readonly lines: readonly Line[];
  readonly pairs: readonly Pair[];
  readonly tables: readonly TableModel[];
  /** Every VIN and car's name on the page, also in the parts that are about others. */
  readonly marks: readonly LotMark[];
  readonly budget: Budget;
}

export function pageFacts(
  tree: PageTree,
  pageUrl: string,
  now: Instant,
  context: ReadContext,
  budget: Budget,
): PageFacts {
  const thisYear = Number(wallClock(now, context.storeZone).date.slice(0, 4));
  const things = [
    ...tree.scripts.flatMap((script) => (script.type === 'application/ld+json' ? readJsonLd(script.text, budget) : [])),
    ...readMicrodata(tree, budget),
    ...readRdfa(tree, budget),
  ].slice(0, budget.things);
  joinThings(things);
  const whole = { roots: [tree.root], skip: new Set<never>() };
  const seen = linesOf(whole);
  const { pairs, tables, spoken } = pairsOf(whole, seen);
  const lines = [...seen, ...spoken].sort((a, b) => a.order - b.order);
  const vehicles = vehiclesIn(things, thisYear + 2);
  const makes = [...new Set([...(context.makes ?? []), ...makesOn(pairs, vehicles)])];
  const site = new URL(pageUrl).hostname;
  const all = linesOf({ ...whole, furniture: true });
  return {
    tree,
    pageUrl,
    base: baseOf(tree, pageUrl),
    clock: {
      now,
      storeZone: context.storeZone,
      venueZone: context.venueZone,
      stated: zoneOfAll(all),
      language: tree.lang,
    },
    thisYear,
    makes,
    places: (context.places ?? []).filter((place) => place.site === site),
    things,
    vehicles,
    meta: readMeta(tree),
    records: readPageJson([...tree.scripts, ...attributeScripts(tree)], budget),
    decimal: numberStyle(seen, tree.lang),
    otherCurrency: all.some((line) => saysOtherCurrency(line.text)),
    lines,
    pairs,
    tables,
    marks: lotMarks(lines, tree.root, thisYear + 2, makes).slice(0, MOST_MARKS),
    budget,
  };
}

/** The zone that lines anywhere on the page say holds for its times; empty where none does or they differ. */
function zoneOfAll(lines: readonly Line[]): string {
  const zones = new Set(lines.flatMap(({ text }) => (text.length > 300 ? [] : statedZone(text) || [])));
  const [zone = ''] = zones;
  return zones.size === 1 ? zone : '';
}

/** Makes that the page itself names as such, so that one of two words is recognized in its headlines too. */
function makesOn(pairs: readonly Pair[], vehicles: readonly Vehicle[]): readonly string[] {
  const labeled = pairs.flatMap(({ label, value }) => {
    const { fact } = labelRoles(label);
    const isMake = (fact.get('make') ?? 0) > 0.9 && !fact.has('model') && fact.size === 1;
    return isMake && /^\p{L}[\p{L} &'’.-]{1,38}$/u.test(value) ? [value] : [];
  });
  const marked = vehicles
    .map(({ thing }) => onlyText(thing, 'brand', 'manufacturer'))
    .filter((make) => make !== '' && make.length <= 40);
  return [...new Set([...labeled, ...marked])].slice(0, 100);
}
