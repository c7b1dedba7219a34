import type { DecimalMark } from '../../domain/money/written-number.ts';
import type { PointedPlace } from '../../domain/setup/site.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { wallClock } from '../../domain/time/wall-clock.ts';
import type { Budget } from '../budget.ts';
import type { PageTree } from '../dom/page-tree.ts';
import type { ClockContext } from '../fields/read-close.ts';
import type { ReadContext } from '../read-context.ts';
import { readJsonLd } from '../structured/json-ld.ts';
import { readMicrodata } from '../structured/microdata.ts';
import { readOpenGraph } from '../structured/open-graph.ts';
import { type PageRecord, readPageJson } from '../structured/page-json.ts';
import { readRdfa } from '../structured/rdfa.ts';
import { joinThings } from '../structured/thing.ts';
import { type Vehicle, vehiclesIn } from '../structured/vehicles.ts';
import { linesOf } from '../text/lines.ts';
import { numberStyle } from '../text/number-style.ts';
import { baseOf } from './lot-link.ts';
import { type LotMark, lotMarks } from './lot-marks.ts';

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
  readonly vehicles: readonly Vehicle[];
  readonly openGraph: ReadonlyMap<string, string>;
  readonly records: readonly PageRecord[];
  readonly decimal: DecimalMark | undefined;
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
  const site = new URL(pageUrl).hostname;
  const everyLine = linesOf({ roots: [tree.root], skip: new Set() });
  return {
    tree,
    pageUrl,
    base: baseOf(tree, pageUrl),
    clock: { now, storeZone: context.storeZone, venueZone: context.venueZone, language: tree.lang },
    thisYear,
    makes: context.makes ?? [],
    places: (context.places ?? []).filter((place) => place.site === site),
    vehicles: vehiclesIn(things, thisYear + 2),
    openGraph: readOpenGraph(tree),
    records: readPageJson(tree.scripts, budget),
    decimal: numberStyle(everyLine, tree.lang),
    marks: lotMarks(everyLine, thisYear + 2, context.makes ?? []).slice(0, MOST_MARKS),
    budget,
  };
}
