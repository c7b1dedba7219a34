import { useState } from 'preact/hooks';
import type { Cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import type { BidAction } from '../../domain/sale/bid-action.ts';
import type { TypedResult } from '../../domain/sale/read-result.ts';
import type { Result } from '../../domain/sale/result.ts';
import { resultDoubt } from '../../domain/sale/result-doubt.ts';
import { proxyAction, resultNoteOf } from '../../domain/sale/result-note.ts';
import { sayResult } from '../../domain/sale/result-words.ts';
import { type Instant, instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Store } from '../../store/store.ts';
import { FieldFrame } from '../../ui/inputs/field.tsx';
import type { Standing } from '../../views/lots/standing.ts';
import { noteBidOnPage } from './note-bid.ts';

export interface SaleNoteProps {
  readonly store: Store;
  readonly lot: LotState;
  readonly standing: Standing;
  readonly now: Instant;
  /** Called with the lot as it is after something was kept. */
  readonly onKept: (lot: LotState) => void;
}

/** What was done or seen at the sale of one lot, or how it ended, in one tap each. */
export function SaleNote({ store, lot, standing, now, onKept }: SaleNoteProps) {
  const [text, setText] = useState('');
  const [picture, setPicture] = useState(true);
  const [fault, setFault] = useState<string>();
  const [said, setSaid] = useState('');
  const [doubted, setDoubted] = useState<string>();
  const { facts, sale } = lot;
  const closed = facts.close !== undefined && facts.close.instant <= now;
  const fallback = facts.priceNow;

  /** The typed amount; undefined when the box is empty; null, with a sentence under the box, when it can't be read. */
  const typed = (): Cents | undefined | null => {
    if (text.trim() === '') return undefined;
    const amount = parseMoney(text);
    if (amount.ok && amount.value > 0) return amount.value;
    setFault(amount.ok ? 'Enter an amount above $0.' : amount.message);
    return null;
  };
  const done = async (sentence: string) => {
    setText('');
    setFault(undefined);
    setDoubted(undefined);
    setSaid(sentence);
    const fresh = await store.lot(lot.id);
    if (fresh !== null) onKept(fresh);
  };
  const act = async (action: BidAction['action'] | 'proxy') => {
    const amount = typed();
    if (amount === null) return;
    const seen = action === 'confirmation-seen' || action === 'result-seen';
    if (amount === undefined && !seen) return setFault('Type the amount first.');
    const meant = action === 'proxy' ? proxyAction(facts.proxy, amount) : action;
    if (meant === null) return setFault('That proxy is already recorded.');
    const kept = await noteBidOnPage(store, lot.id, { action: meant, ...(amount && { cents: amount }) }, picture);
    return kept.ok ? done(kept.value) : setFault(kept.message);
  };
  const end = async (result: Result) => {
    const mark = JSON.stringify(result);
    const doubt = doubted === mark ? null : resultDoubt(result, facts, standing.maxBid);
    if (doubt !== null) {
      setDoubted(mark);
      return setFault(`${doubt} Press again to save it.`);
    }
    const maxBid = standing.missing.length > 0 ? undefined : standing.maxBid;
    const words: TypedResult = { result };
    const note = resultNoteOf({ typed: words, facts, sale, maxBid, now: instant(Date.now()) });
    const written = await store.noteResult(lot.id, note);
    return written.ok ? done(`${sayResult(result)}: saved.`) : setFault(written.message);
  };
  const run = (work: Promise<unknown>) => {
    work.catch((error: unknown) => setFault(String(error)));
  };
  const endWith = async (ended: 'won' | 'lost') => {
    const amount = typed();
    if (amount === null) return;
    if (ended === 'lost') return end(amount === undefined ? { ended } : { ended, hammerCents: amount });
    const hammer = amount ?? fallback;
    if (hammer === undefined) return setFault('Won at what hammer price? Type it first.');
    return end({ ended, hammerCents: hammer });
  };

  return (
    <div class="stack sale-note">
      <FieldFrame label="Amount" fault={fault}>
        {({ id, describedBy, invalid }) => (
          <input
            id={id}
            inputMode="decimal"
            autoComplete="off"
            placeholder={fallback === undefined ? '12,500' : formatMoney(fallback)}
            value={text}
            aria-describedby={describedBy}
            aria-invalid={invalid ? 'true' : undefined}
            onInput={(event) => {
              setText(event.currentTarget.value);
              setFault(undefined);
            }}
          />
        )}
      </FieldFrame>
      {closed ? (
        <div class="row">
          <button type="button" onClick={() => run(endWith('won'))}>
            {text === '' && fallback !== undefined ? `Won at ${formatMoney(fallback)}` : 'Won at this'}
          </button>
          <button type="button" onClick={() => run(endWith('lost'))}>
            {text === '' ? 'Lost, price unknown' : 'Lost at this'}
          </button>
          <button type="button" onClick={() => run(end({ ended: 'not-sold' }))}>
            Not sold
          </button>
          <button type="button" onClick={() => run(end({ ended: 'pending' }))}>
            Pending
          </button>
          <button type="button" onClick={() => run(end({ ended: 'withdrawn' }))}>
            Withdrawn
          </button>
          <button type="button" onClick={() => run(end({ ended: 'not-watched' }))}>
            Unknown, nobody watched
          </button>
        </div>
      ) : (
        <div class="row">
          <button type="button" onClick={() => run(act('proxy'))}>
            Proxy placed
          </button>
          <button type="button" onClick={() => run(act('live-bid'))}>
            Live bid
          </button>
        </div>
      )}
      <div class="row">
        <button type="button" onClick={() => run(act('confirmation-seen'))}>
          Confirmation seen
        </button>
        {closed && (
          <button type="button" onClick={() => run(act('result-seen'))}>
            Result seen
          </button>
        )}
      </div>
      <label class="row small">
        <input type="checkbox" checked={picture} onChange={(event) => setPicture(event.currentTarget.checked)} />
        With a picture of the page in front
      </label>
      <p role="status" class="small">
        {said}
      </p>
    </div>
  );
}
