import { cleanLine } from '../dom/clean-text.ts';
import { ancestorsOf, attributeOf, elementsWithin, type PageElement } from '../dom/page-tree.ts';
import type { LotSource } from '../fields/field-reader.ts';
import { type SaleNames, saleNames } from '../fields/sale-names.ts';
import { meaningOf } from '../roles/label-list.ts';
import { labelRoles } from '../roles/label-roles.ts';
import { onlyText, textsOf } from '../structured/thing.ts';
import { isSale } from '../structured/vehicles.ts';
import { type Line, linesOf } from '../text/lines.ts';
import type { Pair } from '../text/pair.ts';
import type { PageFacts } from './page-facts.ts';
import type { LotPlan } from './plan-lots.ts';

const SITES = /^(?:WebSite|Organization|AutoDealer|AutomotiveBusiness|LocalBusiness|Store|Corporation)$/;

/** What the page says of its venue and its sale: outside the lots of a list, or outside the facts of the one lot. */
export function saleNamesOf(facts: PageFacts, { kind, skip }: LotPlan, sources: readonly LotSource[]): SaleNames {
  const own = new Set(sources.flatMap(({ lines }) => lines.map((line) => line.element)));
  const labeled = new Set(
    facts.pairs.flatMap(({ node, label, how }) =>
      node?.kind === 'element' && !APART.has(how) && namesOther(label) ? [node] : [],
    ),
  );
  // On a page about one lot, what no known label takes may name the sale as well; in a list nothing of a lot does.
  const isFact = (element: PageElement) =>
    own.has(element) &&
    (kind === 'many' || [element, ...ancestorsOf(element)].slice(0, 6).some((up) => labeled.has(up)));
  const organizations = facts.things.flatMap((thing) => {
    const isSite = thing.types.some((type) => SITES.test(type)) && thing.properties.has('url');
    return [...(isSite ? [onlyText(thing, 'name')] : []), ...textsOf(thing, 'organizer')];
  });
  const events = [...new Set(facts.things.filter(isSale).map((thing) => onlyText(thing, 'name')))].filter(
    (name) => name !== '',
  );
  // A fact of a lot with its label before it names neither.
  const named = new Set(
    facts.pairs.flatMap(({ label, value, how }) =>
      how !== 'run-on' && namesOther(label) ? [bare(`${label} ${value}`)] : [],
    ),
  );
  const all = linesOf({ roots: [facts.tree.root], skip, furniture: true });
  const called = elementsWithin(facts.tree.root, (element) => element.showing === 'hidden').flatMap(
    (element): readonly Line[] => {
      const text = /^(?:main|header|body)$/.test(element.tag) ? cleanLine(attributeOf(element, 'aria-label')) : '';
      return text === '' ? [] : [{ text, element, order: element.order, heading: 0, prose: false }];
    },
  );
  const spoken = facts.lines.filter((line) => line.element.tag === 'header');
  return saleNames({
    lines: [...called, ...all, ...spoken].filter(
      (line) => !isFact(line.element) && !named.has(bare(line.text)) && !OF_BEFORE.test(line.text),
    ),
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

/** Whether a label is known for something that is neither a sale nor its house. */
function namesOther(label: string): boolean {
  const { fact } = labelRoles(label);
  return meaningOf(label) !== undefined && !fact.has('sale') && !fact.has('venueName');
}

const APART: ReadonlySet<Pair['how']> = new Set(['colon', 'run-on', 'data']);

const bare = (text: string): string => text.replace(/[\s:]+/g, '').toLowerCase();

/** What was sold before, at sales of other names. */
const OF_BEFORE =
  /\b(?:results?|résultats|resultados|ergebnisse|sold|vendus?|vendidos?|verkauft|last (?:week|month|year|sale)|yesterday|previous|past sales?|next sale)\b/i;
