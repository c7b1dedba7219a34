import type { DraftFacts } from '../capture/draft/draft-facts.ts';
import type { SeenBefore } from '../capture/draft/seen-before.ts';
import type { LotFacts, LotField } from '../domain/lot/lot.ts';
import { type Outcome, ok } from '../domain/outcome.ts';
import type { PageDesk } from './page-desk.ts';

/** One lot of a list page, with what is known of it. */
export interface ListedLot extends DraftFacts {
  readonly key: string;
  readonly heading: string;
  readonly seen: SeenBefore;
}

/** Whether there is anything to be done: a lot to be watched, for the first time or `again`, or `news` of a watched one. */
export function newsOf({ seen }: ListedLot): 'new' | 'again' | 'news' | 'nothing' {
  if (seen.kind === 'new') return 'new';
  if (seen.kind === 'earlier-life' || seen.lot.dropped) return 'again';
  return seen.changes.some(({ taken }) => taken) ? 'news' : 'nothing';
}

export interface Taken {
  readonly said: string;
  readonly undo: () => Promise<Outcome<unknown>>;
}

/** Keeps the ticked lots: all new ones in one entry, then each update. The first refusal stops it and is said. */
export async function takeListed(desk: PageDesk, lots: readonly ListedLot[]): Promise<Taken> {
  const undos: (() => Promise<Outcome<unknown>>)[] = [];
  const said: string[] = [];
  const fresh = lots.filter((lot) => newsOf(lot) !== 'news');
  const undo = async (): Promise<Outcome<unknown>> => {
    for (const one of undos.toReversed()) {
      const answer = await one();
      if (!answer.ok) return answer;
    }
    return ok(null);
  };
  if (fresh.length > 0) {
    const added = await desk.watchAll(fresh);
    if (!added.ok) return { said: added.message, undo };
    undos.push(added.value);
    said.push(`${fresh.length === 1 ? 'One lot' : `${fresh.length} lots`} added to your list.`);
  }
  let updated = 0;
  for (const lot of lots) {
    if (newsOf(lot) !== 'news' || lot.seen.kind !== 'same') continue;
    const taken = new Set<LotField>(lot.seen.changes.flatMap((change) => (change.taken ? [change.field] : [])));
    const set: LotFacts = Object.fromEntries(
      Object.entries(lot.facts).filter(([field]) => taken.has(field as LotField)),
    );
    const evidence = Object.fromEntries(Object.entries(lot.evidence).filter(([field]) => taken.has(field as LotField)));
    const answer = await desk.update(lot.seen.lot.id, set, evidence);
    if (!answer.ok) return { said: [...said, answer.message].join(' '), undo };
    undos.push(answer.value.undo);
    updated++;
  }
  if (updated > 0) said.push(`${updated === 1 ? 'One is' : `${updated} are`} up to date.`);
  return { said: said.join(' '), undo };
}
