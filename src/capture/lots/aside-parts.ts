import { attributeOf, elementsWithin, type PageElement, type PageTree, textOf } from '../dom/page-tree.ts';
import { type Line, linesOf } from '../text/lines.ts';

// Headings over lots that are not this one.
const OTHERS =
  /\b(?:similar|related|recommended|recently viewed|recently sold|sold recently|(?:just|already) sold|sold (?:here|yesterday|today|earlier|before|last|this (?:morning|week|month)|so far|off|on)|you looked at|looked at before|also interesting|more in this (?:sale|lane|run)|vendus? (?:récemment|hier|la semaine|aujourd)|vendidos? (?:la semana|ayer|hoy|reciente)|zuletzt verkauft|résultats|resultados|otros lotes|autres lots|(?:yesterday|last (?:week|sale|month|saturday|friday|thursday))['’]?s?|(?:sale|auction|latest) results|you (?:may|might) (?:also )?(?:like|want)|(?:this|these|that) ones? instead|also (?:bought|looked at|consider)|customers also|bought together|neighbou?rs?|sister units?|also open|other lots|(?:before|after) this (?:one|lot|unit|vehicle|item)|next lot|previous lot|more (?:lots|vehicles|trucks|vans|cars|units|listings|items|like this|from this)|other (?:lots|vehicles|trucks|vans|cars|units|listings|items)|others? in this sale|also (?:in|at|from) this|next (?:up|lots?|vehicles?)|up next|coming up|running next|also viewed|also bid|suggested|nearby|recent results|past (?:sales|results)|previous (?:sales|results)|your watchlist|you are watching|your bids|featured(?: (?:lots|vehicles|units|listings|items|trucks|vans|cars))?|(?:still|also) open(?: for bidding)?|(?:auction|sales?|bid|bidding|offer|price|run|listing) history|history of (?:bids|offers|sales)|earlier (?:sales|runs|bids)|sponsored|advertisement|compare with|más (?:lotes|vehículos)|vehículos similares|véhicules semblables|autres véhicules|ähnliche)\b|مركبات مشابهة|رכבים דומים/iu;

/** The parts of a page that are headed as being about other lots. None of them may speak for the lot of the page. */
export function asideParts(tree: PageTree): ReadonlySet<PageElement> {
  const parts = new Set<PageElement>();
  const lines = linesOf({ roots: [tree.root], skip: new Set() });
  const first = firstTexts(lines);
  const main = aroundMainHeadings(tree);
  const headings = lines.filter((line, at) => isHeadingOverOthers(line, lines[at + 1]));
  for (const line of headings.slice(0, 50)) for (const part of partUnder(line, first, main)) parts.add(part);
  for (const panel of panelsOfOthers(tree)) parts.add(panel);
  return parts;
}

const OTHER_PANELS = /\b(?:cost|costs|fees?|deliver\w*|shipping|transport|financ\w*|payments?|calculator|history)\b/i;

/** Panels whose tab says that they are about others, or about what it costs to bring a lot home. */
function panelsOfOthers({ root }: PageTree): readonly PageElement[] {
  const all = elementsWithin(root);
  const byId = new Map(
    all.flatMap((element) => (element.attributes.has('id') ? [[attributeOf(element, 'id'), element] as const] : [])),
  );
  return all.filter((element) => {
    if (attributeOf(element, 'role') !== 'tabpanel') return false;
    const tab = byId.get(attributeOf(element, 'aria-labelledby'));
    const name = tab === undefined ? attributeOf(element, 'aria-label') : textOf(tab);
    return OTHERS.test(name) || OTHER_PANELS.test(name);
  });
}

function isHeadingOverOthers(line: Line, next: Line | undefined): boolean {
  if (line.text.length > 60 || !OTHERS.test(line.text)) return false;
  if (line.heading > 1) return true;
  // Without heading markup, a short line alone in its block with something after it.
  return line.heading === 0 && line.text.split(' ').length <= 6 && next !== undefined && !/[.:]$/.test(line.text);
}

/** What a heading is over: the box it begins, or what follows it up to the next heading of its rank. */
function partUnder(
  line: Line,
  first: ReadonlyMap<PageElement, number>,
  main: ReadonlySet<PageElement>,
): readonly PageElement[] {
  let box = line.element;
  // A page may begin with its cars beside; what they and the lot are both in is no part of its own.
  while (box.parent !== null && !main.has(box.parent) && first.get(box.parent) === line.order) box = box.parent;
  if (box.parent === null || box.tag === 'body' || main.has(box)) return [];
  const parts = [box];
  if (!isOnlyHeading(box, line)) return parts;
  const siblings = box.parent.children;
  for (const sibling of siblings.slice(siblings.indexOf(box) + 1)) {
    if (sibling.kind === 'text') continue;
    if (beginsNewPart(sibling, line.heading) || main.has(sibling)) break;
    parts.push(sibling);
  }
  return parts;
}

/** For each element, the order of the first line of text in it. */
function firstTexts(lines: readonly Line[]): ReadonlyMap<PageElement, number> {
  const first = new Map<PageElement, number>();
  for (const line of lines) {
    for (let up: PageElement | null = line.element; up !== null && !first.has(up); up = up.parent) {
      first.set(up, line.order);
    }
  }
  return first;
}

function isOnlyHeading(box: PageElement, line: Line): boolean {
  const lines = linesOf({ roots: [box], skip: new Set() });
  return lines.reduce((length, one) => length + one.text.length, 0) <= line.text.length + 40;
}

/** The main headings, the page's own among them, and all that they are in. */
function aroundMainHeadings({ root }: PageTree): ReadonlySet<PageElement> {
  const around = new Set<PageElement>();
  for (const element of elementsWithin(root, (inner) => inner.showing === 'hidden')) {
    if (element.tag !== 'h1') continue;
    for (let up: PageElement | null = element; up !== null && !around.has(up); up = up.parent) around.add(up);
  }
  return around;
}

function beginsNewPart(sibling: PageElement, level: number): boolean {
  const opening = linesOf({ roots: [sibling], skip: new Set() })[0];
  if (opening === undefined || opening.heading === 0 || OTHERS.test(opening.text)) return false;
  return level === 0 || opening.heading <= level;
}
