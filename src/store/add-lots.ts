import type { LotFacts, LotId, LotSource } from '../domain/lot/lot.ts';
import { type Outcome, ok, type Refusal } from '../domain/outcome.ts';
import type { EntryId, Evidence, Happening, NewLot } from '../journal/entry.ts';
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
  let batch: LotToAdd[] = [];
  const added = (stopped: boolean): LotsAdded => ({ lots: ids, entries, stopped });

  /** One look at the clock and one draw of randomness for the whole batch; the ids keep the order of the rows. */
  function withIds(): NewLot[] {
    const now = session.now();
    const random = session.random(batch.length * ID_RANDOM_BYTES);
    return batch.map(({ facts, evidence = {} }, i) => {
      last = nextLotId(now, last, random.subarray(i * ID_RANDOM_BYTES, (i + 1) * ID_RANDOM_BYTES));
      return { id: last, facts, evidence };
    });
  }

  async function writeBatch(final: boolean): Promise<Refusal | null> {
    if (batch.length === 0) return null;
    const happening: Happening = { kind: 'lots-added', source, lots: withIds() };
    const written = await append(session, [{ subject: LOTS, happening }], final ? 'strict' : 'relaxed');
    if (!written.ok) return written;
    for (const lot of happening.lots) ids.push(lot.id);
    for (const entry of written.value) entries.push(entry.id);
    batch = [];
    onProgress?.(ids.length);
    return null;
  }

  for await (const lot of lots) {
    if (batch.length === batchSize) {
      const refusal = await writeBatch(false);
      if (refusal !== null) return { ok: false, ...refusal, added: added(false) };
    }
    if (signal?.aborted) return ok(added(true));
    batch.push(lot);
  }
  if (signal?.aborted) return ok(added(true));
  const refusal = await writeBatch(true);
  return refusal === null ? ok(added(false)) : { ok: false, ...refusal, added: added(false) };
}
