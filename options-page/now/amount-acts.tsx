import { useId, useRef, useState } from 'preact/hooks';
import type { LotAct } from '../../src/acts/act.ts';
import type { Cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { parseMoney } from '../../src/domain/money/parse-money.ts';
import { useBoxText } from '../../src/ui/inputs/use-box-text.ts';

export interface AmountAct {
  /** What the button says with an amount in the box, and without. */
  readonly words: (amount: string | null, cents: Cents | null) => string;
  /** Null when it can't be done without an amount. */
  readonly act: (amount: Cents | null) => LotAct | null;
  readonly main?: boolean;
}

interface AmountActsProps {
  readonly label: string;
  /** What stands in the box until it is typed over. */
  readonly start: Cents | undefined;
  readonly acts: readonly AmountAct[];
  readonly onAct: (act: LotAct) => void;
}

/** An amount, and the buttons that go by it: one press when the amount is right already. */
export function AmountActs({ label, start, acts, onAct }: AmountActsProps) {
  const id = useId();
  const box = useRef<HTMLInputElement>(null);
  const written = start === undefined ? '' : formatMoney(start).replace('$', '');
  const { text, setText } = useBoxText(written);
  const [fault, setFault] = useState<string>();

  const amount = text.trim() === '' ? null : parseMoney(text);
  const good = amount?.ok && amount.value > 0 ? amount.value : null;
  const press = ({ act }: AmountAct) => {
    const problem =
      amount === null ? null : !amount.ok ? amount.message : amount.value > 0 ? null : 'Enter an amount above $0.';
    const wanted = problem === null ? act(good) : null;
    setFault(problem ?? (wanted === null ? 'Enter the amount first.' : undefined));
    if (wanted === null) box.current?.focus();
    else onAct(wanted);
  };

  return (
    <div class="now-amount">
      <div class="field">
        <label class="label" for={id}>
          {label}
        </label>
        <span class="unit-box has-before">
          <span class="unit" aria-hidden="true">
            $
          </span>
          <input
            ref={box}
            id={id}
            class="number"
            inputMode="decimal"
            autoComplete="off"
            value={text}
            aria-invalid={fault === undefined ? undefined : 'true'}
            aria-describedby={fault === undefined ? undefined : `${id}-fault`}
            onInput={(event) => {
              setText(event.currentTarget.value);
              setFault(undefined);
            }}
            onFocus={(event) => event.currentTarget.select()}
            onKeyDown={(event) => {
              // Where several buttons go by the amount, Enter could mean any of them.
              const [only, ...others] = acts;
              if (event.key === 'Enter' && only !== undefined && others.length === 0) press(only);
            }}
          />
        </span>
      </div>
      <div class="now-acts">
        {acts.map((act) => {
          const words = act.words(good === null ? null : formatMoney(good), good);
          return (
            <button key={words} type="button" class={act.main ? 'main' : ''} onClick={() => press(act)}>
              {words}
            </button>
          );
        })}
      </div>
      {fault !== undefined && (
        <span class="fault" id={`${id}-fault`} role="alert">
          {fault}
        </span>
      )}
    </div>
  );
}
