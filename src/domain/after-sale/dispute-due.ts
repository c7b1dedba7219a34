import type { DisputeRecord } from '../dispute/dispute.ts';
import type { Instant } from '../time/instant.ts';
import { type Due, dueBy, type SaleEvents } from './due.ts';
import type { VenuePlace } from './venue-place.ts';

/** What a dispute waits for from us. */
export interface DisputeDue {
  /** `tell`: bring our claim to the venue; `answer`: answer another's; `next`: what the other side set a date for. */
  readonly kind: 'tell' | 'answer' | 'next';
  readonly what: string;
  readonly due: Due;
}

/**
 * What is to be done in an open dispute, and until when: the claim or the answer until it is noted as done, and the next
 * thing where a date was set for it. Nothing once it is closed.
 * @param events of its lot
 */
export function disputeDues(dispute: DisputeRecord, events: SaleEvents, place: VenuePlace): readonly DisputeDue[] {
  if (dispute.outcome !== undefined) return [];
  const dues: DisputeDue[] = [];
  const first = firstStep(dispute);
  if (first !== null) dues.push({ ...first, due: firstDue(dispute, events, place) });
  if (dispute.next !== undefined)
    dues.push({ kind: 'next', what: dispute.next.what, due: { as: 'at', at: dispute.next.at } });
  return dues;
}

/** The soonest moment by which something is to be done; undefined when no date is known. */
export function soonestDue(dues: readonly DisputeDue[]): Instant | undefined {
  const moments = dues.flatMap(({ due }) => (due.as === 'at' ? due.at : []));
  return moments.length === 0 ? undefined : (Math.min(...moments) as Instant);
}

function firstStep({ side, steps }: DisputeRecord): Pick<DisputeDue, 'kind' | 'what'> | null {
  const done = (what: 'told' | 'answered') => steps.some((step) => step.what === what);
  if (side === 'ours') return done('told') ? null : { kind: 'tell', what: 'File the claim with the venue' };
  return done('answered') ? null : { kind: 'answer', what: 'Answer the claim' };
}

function firstDue(dispute: DisputeRecord, events: SaleEvents, place: VenuePlace): Due {
  if (dispute.dueAt !== undefined) return { as: 'at', at: dispute.dueAt };
  const rules = place.rules?.disputes[dispute.reason];
  return dispute.side === 'ours'
    ? dueBy(rules?.claim, { ...events, notice: dispute.at }, place)
    : dueBy(rules?.answer, { ...events, notice: dispute.at }, place);
}
