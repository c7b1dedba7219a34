import { type DraftFacts, factsOf, type KnownNames } from '../capture/draft/draft-facts.ts';
import { type DraftLots, TIED_FIELDS, type TiedField } from '../capture/draft/draft-lot.ts';
import { compareWithWatched } from '../capture/draft/seen-before.ts';
import type { Evidence } from '../domain/lot/evidence.ts';
import type { LotFacts } from '../domain/lot/lot.ts';
import type { LotState } from '../folds/lot-state.ts';
import { namesAnotherCar } from './another-car.ts';
import { type AskedChange, whyAsked } from './asked-change.ts';

/** What opening a watched lot's own page brings up to date, and what it asks about first. */
export interface Refresh {
  readonly lot: LotState;
  /** The facts to be written as they are now; empty when nothing is. */
  readonly set: LotFacts;
  /** What they were before. */
  readonly was: LotFacts;
  readonly asked: readonly AskedChange[];
  /** The price that is known already and stands there still, with where it was read; absent where the page does not say it. */
  readonly still?: { readonly set: LotFacts; readonly evidence: Readonly<Record<string, Evidence>> };
  /** Where on the page what is written was read. */
  readonly evidence: Readonly<Record<string, Evidence>>;
}

/**
 * What a page that was opened says of a watched lot. Only the price now and the close; only for a lot with the very VIN that
 * the page shows; only what the page ties to that VIN and said twice alike; and nothing that doubles, jumps or falls, or stands
 * under the name of another car.
 * Null when the page is about no watched lot.
 */
export function refreshPlan(page: DraftLots, watched: readonly LotState[], known: KnownNames): Refresh | null {
  const [draft] = page.lots;
  if (page.kind !== 'one' || draft === undefined) return null;
  // Of several VINs none is the page's until somebody has said so.
  if (draft.fields.vin?.settled === false) return null;
  const drafted = factsOf(draft, known);
  const seen = compareWithWatched(drafted.facts, watched, page.readAt);
  if (seen.kind !== 'same' || seen.lot.dropped) return null;
  const nothing: Refresh = { lot: seen.lot, set: {}, was: {}, asked: [], evidence: {} };
  if (drafted.facts.vin === undefined || drafted.facts.vin !== seen.lot.facts.vin) return nothing;
  const changed = new Set(seen.changes.map(({ field }) => field));
  const said = TIED_FIELDS.filter((field) => draft.tied.includes(field) && changed.has(field));
  const isStill = draft.tied.includes('priceNow') && !changed.has('priceNow');
  const same = isStill && !namesAnotherCar(seen.lot.facts, drafted.facts) ? stillThere(drafted) : {};
  return said.reduce((plan, field) => withField(plan, field, drafted), { ...nothing, ...same });
}

function stillThere({ facts: { priceNow }, evidence: { priceNow: where } }: DraftFacts): Pick<Refresh, 'still'> {
  if (priceNow === undefined || where === undefined || where.sure === 'doubtful') return {};
  return { still: { set: { priceNow }, evidence: { priceNow: where } } };
}

function withField(plan: Refresh, field: TiedField, { facts, evidence }: DraftFacts): Refresh {
  const where = evidence[field];
  if (where === undefined || where.sure === 'doubtful') return plan;
  const known = plan.lot.facts;
  const why = whyAsked(field, known, facts);
  const asked = why === null ? null : askedAbout(field, facts, { why, evidence: where });
  if (asked !== null) return { ...plan, asked: [...plan.asked, asked] };
  if (field === 'close' && (facts.close?.doubts.length ?? 0) > 0) return plan;
  return {
    ...plan,
    set: { ...plan.set, ...only(field, facts) },
    was: { ...plan.was, ...only(field, known) },
    evidence: { ...plan.evidence, [field]: where },
  };
}

function askedAbout(
  field: TiedField,
  facts: LotFacts,
  about: Pick<AskedChange, 'why' | 'evidence'>,
): AskedChange | null {
  if (field === 'priceNow') return facts.priceNow === undefined ? null : { field, after: facts.priceNow, ...about };
  return facts.close === undefined ? null : { field, after: facts.close, ...about };
}

const only = (field: TiedField, facts: LotFacts): LotFacts =>
  facts[field] === undefined ? {} : { [field]: facts[field] };
