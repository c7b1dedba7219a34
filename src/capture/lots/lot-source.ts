import type { PageElement } from '../dom/page-tree.ts';
import type { LotSource, SharedWords } from '../fields/field-reader.ts';
import { meaningOf } from '../roles/label-list.ts';
import { isRemark, isTalk, labelRoles } from '../roles/label-roles.ts';
import type { Line } from '../text/lines.ts';
import { elementOf, type Pair } from '../text/pair.ts';
import { isInSellersWords } from '../text/sellers-words.ts';
import type { PageFacts } from './page-facts.ts';
import type { LotPlan } from './plan-lots.ts';

/** The lines and pairs of a page by the lot that they stand in. */
export function lotSources(plan: LotPlan, facts: PageFacts): readonly LotSource[] {
  const owner = new Map<PageElement, number>();
  plan.lots.forEach((roots, lot) => {
    for (const root of roots) owner.set(root, lot);
  });
  const lotOf = (element: PageElement | null): number | 'none' | 'others' => {
    for (let up = element; up !== null; up = up.parent) {
      if (plan.skip.has(up)) return 'others';
      const lot = owner.get(up);
      if (lot !== undefined) return lot;
    }
    return 'none';
  };
  const lines = plan.lots.map((): Line[] => []);
  const pairs = plan.lots.map((): Pair[] => []);
  const shared: { lines: Line[]; pairs: Pair[] } = { lines: [], pairs: [] };
  const talk = new Set<PageElement>();
  for (const line of facts.lines) {
    if (isInSellersWords(line.text)) {
      talk.add(line.element);
      continue;
    }
    const lot = lotOf(line.element);
    if (lot === 'none') shared.lines.push(line);
    else if (lot !== 'others') lines[lot]?.push(line);
  }
  const labels = new Set(
    facts.pairs.flatMap(({ label, how }) =>
      (how === 'cell' || how === 'head') && meaningOf(label) !== undefined ? [label] : [],
    ),
  );
  const covered = new Set<PageElement>();
  const named = new Set<PageElement>();
  // In a list, what somebody remarks of a lot is the condition at most, and never a figure.
  const remarks = new Set(
    plan.kind === 'one'
      ? []
      : facts.pairs.flatMap(({ how, label, node }) =>
          node?.kind === 'element' && (how === 'head' || how === 'cell') && isRemark(label) ? [node] : [],
        ),
  );
  for (const pair of facts.pairs) {
    const element = elementOf(pair.node);
    if ((pair.how === 'colon' || pair.how === 'run-on') && element !== null && isCovered(element, remarks)) continue;
    if (element !== null && talk.has(element)) continue;
    const lot = lotOf(element);
    if (lot === 'none') shared.pairs.push(pair);
    else if (lot !== 'others') pairs[lot]?.push(pair);
    if (pair.node?.kind === 'element' && (remarks.has(pair.node) || isTalk(pair.label, pair.value))) {
      covered.add(pair.node);
      named.add(pair.node);
    }
    if (
      pair.node?.kind === 'element' &&
      !NOT_COVERING.has(pair.how) &&
      pair.value.length <= MOST_COVERED &&
      !pair.value.includes('\n')
    ) {
      covered.add(pair.node);
      if (isSomethingElse(pair)) named.add(pair.node);
    }
  }
  const extent = plan.kind === 'one' ? 'page' : 'card';
  return plan.lots.map((roots, lot): LotSource => {
    const own = (lines[lot] ?? []).filter((line) => remarks.size === 0 || !isCovered(line.element, remarks));
    return {
      lines: own,
      pairs: pairs[lot] ?? [],
      looseLines: own.filter((line) => line.spoken === true || !isCovered(line.element, covered)),
      factLines: own.filter((line) => !isCovered(line.element, named) && !labels.has(line.text)),
      shared: extent === 'card' ? nearestFirst(shared, roots[0]?.order ?? 0) : { lines: [], pairs: [] },
      extent,
      decimal: facts.decimal,
      otherCurrency: facts.otherCurrency,
      clock: facts.clock,
      thisYear: facts.thisYear,
      makes: facts.makes,
    };
  });
}

/** Whether a label names what is looked for in no field. */
function isSomethingElse({ label }: Pair): boolean {
  const { fact, money, time } = labelRoles(label);
  return (fact.get('other') ?? 0) > 0.9 || money.size > 0 || time.size > 0;
}

const NOT_COVERING: ReadonlySet<Pair['how']> = new Set(['colon', 'run-on', 'data']);
/** A value longer than this holds more than its label names. */
const MOST_COVERED = 120;
const MOST_STEPS = 6;

function isCovered(element: PageElement, covered: ReadonlySet<PageElement>): boolean {
  let up: PageElement | null = element;
  for (let steps = 0; up !== null && steps < MOST_STEPS; steps++, up = up.parent) if (covered.has(up)) return true;
  return false;
}

const MOST_SHARED = 300;

/** What stands above a lot, the nearest first, and then what stands below. */
function nearestFirst({ lines, pairs }: SharedWords, order: number): SharedWords {
  let low = 0;
  for (let high = lines.length; low < high; ) {
    const middle = (low + high) >> 1;
    if ((lines[middle]?.order ?? 0) < order) low = middle + 1;
    else high = middle;
  }
  const above = lines.slice(Math.max(0, low - MOST_SHARED), low).toReversed();
  return { lines: [...above, ...lines.slice(low, low + MOST_SHARED)], pairs };
}
