import { useState } from 'preact/hooks';
import type { Ended } from '../../src/acts/act.ts';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { readResult } from '../../src/domain/sale/read-result.ts';
import { sayResult } from '../../src/domain/sale/result-words.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { Standing } from '../../src/views/lots/standing.ts';

interface ClosingRowProps {
  readonly lot: LotState;
  readonly index: number;
  readonly count: number;
  readonly top: number;
  readonly height: number;
  readonly standing: Standing;
  readonly draft: string;
  readonly onType: (id: string, text: string) => void;
  readonly onGo: (index: number) => void;
  /** Sends it. Resolves to null once it is kept, to '' where it waits for an answer above the list, else to why it can't be. */
  readonly keep: (lot: LotState, act: Ended) => Promise<string | null>;
  /** Whether it would be kept as it is, without a question. */
  readonly isPlain: (lot: LotState, act: Ended) => boolean;
}

/** One closing and its line. What was typed stays in it until it is kept, whatever happens. */
export function ClosingRow({
  lot,
  index,
  count,
  top,
  height,
  standing,
  draft,
  onType,
  onGo,
  keep,
  isPlain,
}: ClosingRowProps) {
  const { setup } = useWorkspace();
  const [fault, setFault] = useState<string>();
  const { facts, sale } = lot;
  const noted = sale?.result?.result;
  const nameId = `closing-${lot.id}`;
  const sayId = `${nameId}-said`;

  const enter = async () => {
    if (draft.trim() === '') return onGo(index + 1);
    const typed = readResult(draft);
    if (!typed.ok) return setFault(typed.message);
    setFault(undefined);
    const { result, by } = typed.value;
    const act: Ended = { do: 'ended', result, by, corrects: sale?.result?.entry ?? null };
    // On to the next line at once; should the write fail, this one says so and still holds what was typed.
    if (isPlain(lot, act)) onGo(index + 1);
    const sentence = await keep(lot, act);
    if (sentence === null) onType(lot.id, '');
    else if (sentence !== '') setFault(sentence);
  };

  return (
    <li
      class="closing-row"
      style={{ transform: `translateY(${top}px)`, height: `${height}px` }}
      aria-posinset={index + 1}
      aria-setsize={count}
    >
      <div class="closing-car" id={nameId}>
        <a href={`#/lot/${lot.id}`} class="strong" tabIndex={-1}>
          {lotTitle(facts)}
        </a>
        <span class="quiet small">
          {[
            facts.close && sayTime(facts.close.instant, setup.store.zone),
            facts.venueName ?? facts.venueId,
            facts.lotNumber && `lot ${facts.lotNumber}`,
          ]
            .filter(Boolean)
            .join(' · ')}
        </span>
      </div>
      <div class="closing-figures small quiet">
        {facts.proxy !== undefined && <span>proxy {formatMoney(facts.proxy)}</span>}
        {standing.maxBid !== null && <span>max bid {formatMoney(standing.maxBid)}</span>}
        {facts.priceNow !== undefined && <span>last price {formatMoney(facts.priceNow)}</span>}
      </div>
      <input
        class="closing-line"
        data-row={index}
        autoComplete="off"
        autoCapitalize="off"
        spellcheck={false}
        value={draft}
        placeholder={noted === undefined ? 'how it ended' : 'to correct it'}
        aria-label={`How ${lotTitle(facts)} ended`}
        aria-describedby={sayId}
        aria-invalid={fault === undefined ? undefined : 'true'}
        onInput={(event) => {
          onType(lot.id, event.currentTarget.value);
          setFault(undefined);
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter') enter().catch((error: unknown) => setFault(String(error)));
          else if (event.key === 'ArrowDown') onGo(index + 1);
          else if (event.key === 'ArrowUp') onGo(Math.max(0, index - 1));
          else return;
          event.preventDefault();
        }}
      />
      <div class="closing-said small" id={sayId}>
        {fault !== undefined ? (
          <span class="fault" role="alert">
            {fault}
          </span>
        ) : noted === undefined ? (
          draft !== '' && <span class="quiet">Enter saves it</span>
        ) : (
          <strong>{sayResult(noted)}</strong>
        )}
      </div>
    </li>
  );
}
