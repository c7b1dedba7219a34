import { useState } from 'preact/hooks';
import type { Setup } from '../../domain/setup/setup.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { AskedChange } from '../../reading/asked-change.ts';
import type { Store } from '../../store/store.ts';
import { FACT_WORDS, factInWords } from './fact-words.ts';

interface AskedNoteProps {
  readonly lot: LotState;
  readonly asked: AskedChange;
  readonly store: Store;
  readonly setup: Setup;
  /** Called with the lot as it is after the page's figure was taken. */
  readonly onTaken: (lot: LotState) => void;
}

type Answer =
  | { readonly is: 'open' | 'left' }
  | { readonly is: 'taken'; readonly undo: () => Promise<void> }
  | { readonly is: 'failed'; readonly message: string };

/** A figure of the page that is not taken until the user has said so: what it is, what is saved, and why it is asked. */
export function AskedNote({ lot, asked, store, setup, onTaken }: AskedNoteProps) {
  const [answer, setAnswer] = useState<Answer>({ is: 'open' });
  const { field, after, evidence, why } = asked;
  const before = lot.facts[field];
  const page = factInWords(field, after, setup);
  const take = async () => {
    const fact = { set: { [field]: after }, evidence: { [field]: evidence } };
    const changed = await store.changeLot(lot.id, { ...fact, confirmed: true });
    if (!changed.ok) return setAnswer({ is: 'failed', message: changed.message });
    const undo = async () => {
      const back = await store.undo(...changed.value.map(({ id }) => id));
      setAnswer(back.ok ? { is: 'open' } : { is: 'failed', message: back.message });
      onTaken((await store.lot(lot.id)) ?? lot);
    };
    setAnswer({ is: 'taken', undo });
    onTaken((await store.lot(lot.id)) ?? lot);
  };
  const safely = (work: Promise<void>) =>
    void work.catch((error: unknown) => setAnswer({ is: 'failed', message: String(error) }));
  return (
    <div class="note warning stack small" role="group" aria-label={`Check: ${FACT_WORDS[field] ?? field}`}>
      {answer.is === 'taken' ? (
        <p class="row apart">
          <span role="status">
            {FACT_WORDS[field]}: <strong>{page}</strong>, taken from this page.
          </span>
          <button type="button" onClick={() => safely(answer.undo())}>
            Undo
          </button>
        </p>
      ) : (
        <>
          <p>
            The page says {FACT_WORDS[field]?.toLowerCase()} <strong>{page}</strong>
            {before !== undefined && <>, saved is {factInWords(field, before, setup)}</>}. {WHY_WORDS[why]}
          </p>
          <p class="quiet">
            <q class="draft-quote">{evidence.text}</q>
          </p>
          {answer.is === 'failed' && <p role="alert">{answer.message}</p>}
          {answer.is === 'left' ? (
            <p role="status">Left as it was.</p>
          ) : (
            <div class="row">
              <button type="button" onClick={() => safely(take())}>
                Use {page}
              </button>
              <button type="button" onClick={() => setAnswer({ is: 'left' })}>
                Leave as saved
              </button>
            </div>
          )}
        </>
      )}
    </div>
  );
}

const WHY_WORDS: Readonly<Record<AskedChange['why'], string>> = {
  'other-car': 'The page shows this VIN under the name of another car. Check that it is this lot.',
  lower: 'Bids only rise, so one of the two is wrong.',
  leap: 'That is a big jump. Check that it is this lot’s bid.',
  sooner: 'That is sooner than saved. Check it before you rely on either.',
  moved: 'That is much later than saved. Check that it is this lot’s close.',
};
