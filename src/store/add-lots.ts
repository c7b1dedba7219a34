import type { LotFacts, LotId, LotSource } from '../domain/lot/lot.ts';
import { type Outcome, ok, type Refusal } from '../domain/outcome.ts';
import type { EntryId, Evidence, NewLot } from '../journal/entry.ts';
import { ID_RANDOM_BYTES, nextLotId } from '../journal/sortable-id.ts';
import { LOTS } from '../journal/subject.ts';
import { append } from './append.ts';
import type { Session } from './session.ts';

/** A lot that is to come in. */
export interface LotToAdd {
  readonly facts: LotFacts;
  readonly evidence?: Readonly<Record<string, Evidence>>;
}

export interface AddLotsOptions {
  /** Looked at between batches. What was written stays; `entries` in the answer can be undone. */
  readonly signal?: AbortSignal;
  /** Called after each batch with the number of lots written so far. */
  readonly onProgress?: (written: number) => void;
  /** Lots an entry; 250 when left out. */
  readonly batchSize?: number;
}

/** What an import left in the journal, whether it finished or not. */
export interface LotsAdded {
  readonly lots: readonly LotId[];
  /** One a batch, in order: undo them to take the import back. */
  readonly entries: readonly EntryId[];
  /** The signal stopped it before the end. */
  readonly stopped: boolean;
}

/**
 * Brings lots in, in batches. Each batch is one entry and one transaction, so that other tabs and alerts get their turn
 * in between, a stop or a full disk keeps whole batches, and a power cut loses none but the last.
 */
export async function addLots(
  session: Session,
  source: LotSource,
  lots: Iterable<LotToAdd> | AsyncIterable<LotToAdd>,
  { signal, onProgress, batchSize = 250 }: AddLotsOptions = {},
): Promise<Outcome<LotsAdded, Refusal & { readonly added: LotsAdded }>> {
  const ids: LotId[] = [];
  const entries: EntryId[] = [];
  let last: LotId | null = null;
  let batch: NewLot[] = [];
  const added = (stopped: boolean): LotsAdded => ({ lots: ids, entries, stopped });

  async function writeBatch(final: boolean): Promise<Refusal | null> {
    if (batch.length === 0) return null;
    const happening = { kind: 'lots-added', source, lots: batch } as const;
    const written = await append(session, [{ subject: LOTS, happening }], final ? 'strict' : 'relaxed');
    if (!written.ok) return written;
    for (const lot of batch) ids.push(lot.id);
    for (const entry of written.value) entries.push(entry.id);
    batch = [];
    onProgress?.(ids.length);
    return null;
  }

  for await (const { facts, evidence = {} } of lots) {
    if (batch.length === batchSize) {
      const refusal = await writeBatch(false);
      if (refusal !== null) return { ok: false, ...refusal, added: added(false) };
    }
    if (signal?.aborted) return ok(added(true));
    last = nextLotId(session.now(), last, session.random(ID_RANDOM_BYTES));
    batch.push({ id: last, facts, evidence });
  }
  if (signal?.aborted) return ok(added(true));
  const refusal = await writeBatch(true);
  return refusal === null ? ok(added(false)) : { ok: false, ...refusal, added: added(false) };
}
