import { listingContradictions } from '../../domain/appraisal/appraise.ts';
import { attempt, attemptEach } from '../../domain/attempt.ts';
import type { Contradiction, Sighting } from '../../domain/claims/contradictions.ts';
import { groupBy } from '../../domain/group-by.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { sayDate } from '../../domain/time/say-time.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import type { Zone } from '../../domain/time/zone.ts';
import type { LotState } from '../../folds/lot-state.ts';

/** How a sentence names another lot with the same VIN. */
export function sightingOf({ facts, addedAt }: LotState, zone: Zone): Sighting {
  const where = facts.venueName === undefined ? '' : ` at ${facts.venueName}`;
  return { source: `its listing${where}, seen ${sayDate(dateIn(zone, addedAt))},`, at: addedAt, facts };
}

/**
 * What does not fit together about each of many lots: within its listing, against its VIN, and against the other lots of
 * the same car among them. Worked out once a lot, and only for those that are asked about.
 */
export function listingDoubts(lots: readonly LotState[], setup: Setup): (lot: LotState) => readonly Contradiction[] {
  const known = new Map<LotState, readonly Contradiction[]>();
  let byVin: ReadonlyMap<string | undefined, readonly LotState[]> | undefined;
  return (lot) => {
    byVin ??= groupBy(lots, ({ facts }) => facts.vin);
    const same = lot.facts.vin === undefined ? [] : (byVin.get(lot.facts.vin) ?? []);
    const before = known.get(lot);
    if (before !== undefined) return before;
    const others = same.filter(({ id }) => id !== lot.id);
    const earlier = attemptEach(others, (other) => sightingOf(other, setup.store.zone)).done;
    const found = attempt(() => listingContradictions(lot.facts, setup, { now: lot.addedAt, earlier }));
    // What can't be compared contradicts nothing that could be said.
    const doubts = found.ok ? found.value : [];
    known.set(lot, doubts);
    return doubts;
  };
}
