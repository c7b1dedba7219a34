import type { LotSource } from '../fields/field-reader.ts';
import { type SaleNames, saleNames } from '../fields/sale-names.ts';
import { onlyText, textsOf } from '../structured/thing.ts';
import { isSale } from '../structured/vehicles.ts';
import { linesOf } from '../text/lines.ts';
import type { PageFacts } from './page-facts.ts';
import type { LotPlan } from './plan-lots.ts';

const SITES = /^(?:WebSite|Organization|AutoDealer|AutomotiveBusiness|LocalBusiness|Store|Corporation)$/;

/** What the page says of its venue and its sale: outside the lots of a list, or outside the facts of the one lot. */
export function saleNamesOf(facts: PageFacts, { kind, skip }: LotPlan, sources: readonly LotSource[]): SaleNames {
  const own = sources.flatMap(({ lines }) => lines.map((line) => line.element));
  const loose = new Set(sources.flatMap(({ looseLines }) => looseLines.map((line) => line.element)));
  // On a page about one lot, what no label takes may name the sale as well; in a list nothing of a lot does.
  const isFact = new Set(kind === 'many' ? own : own.filter((element) => !loose.has(element)));
  const organizations = facts.things.flatMap((thing) => {
    const isSite = thing.types.some((type) => SITES.test(type)) && thing.properties.has('url');
    return [...(isSite ? [onlyText(thing, 'name')] : []), ...textsOf(thing, 'organizer')];
  });
  const events = [...new Set(facts.things.filter(isSale).map((thing) => onlyText(thing, 'name')))].filter(
    (name) => name !== '',
  );
  const all = linesOf({ roots: [facts.tree.root], skip, furniture: true });
  const spoken = facts.lines.filter((line) => line.element.tag === 'header');
  return saleNames({
    lines: [...all, ...spoken].filter((line) => !isFact.has(line.element)),
    title: facts.tree.title,
    host: new URL(facts.pageUrl).hostname,
    meta: facts.meta,
    organizations: organizations.filter((name) => name !== ''),
    events: events.length === 1 ? events : [],
    newest: facts.thisYear + 2,
    makes: facts.makes,
    cars: facts.marks.flatMap(({ kind, key }) => (kind === 'name' ? [key.slice(5)] : [])),
  });
}
