import type { DraftFacts } from '../capture/draft-facts.ts';
import type { Evidence } from '../domain/lot/evidence.ts';
import type { LotFacts, LotField } from '../domain/lot/lot.ts';
import type { FactChange } from '../folds/fact-changes.ts';

/** What a page may change of its lot without being asked each time. */
const REFRESHED: ReadonlySet<LotField> = new Set(['priceNow', 'close']);

/** The price now and the close as they are now, and as they were. */
export interface Refresh {
  readonly set: LotFacts;
  readonly was: LotFacts;
  readonly evidence: Readonly<Record<string, Evidence>>;
}

/**
 * What opening a watched lot's own page brings up to date: only the price now and the close, only where the page says so
 * without doubt, and never a lower bid. Null when there is nothing.
 */
export function refreshPlan({ facts, evidence }: DraftFacts, changes: readonly FactChange[]): Refresh | null {
  const taken = changes.filter(({ field, taken }) => {
    const doubtful = evidence[field] === undefined || evidence[field].sure === 'doubtful';
    const unclear = field === 'close' && (facts.close?.doubts.length ?? 0) > 0;
    return taken && REFRESHED.has(field) && !doubtful && !unclear;
  });
  if (taken.length === 0) return null;
  return {
    set: Object.fromEntries(taken.map(({ field, after }) => [field, after])),
    was: Object.fromEntries(taken.flatMap(({ field, before }) => (before === undefined ? [] : [[field, before]]))),
    evidence: Object.fromEntries(taken.flatMap(({ field }) => (evidence[field] ? [[field, evidence[field]]] : []))),
  };
}
