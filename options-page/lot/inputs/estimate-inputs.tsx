import { useState } from 'preact/hooks';
import { rangeFault } from '../../../src/domain/lot/not-meant.ts';
import type { Cents } from '../../../src/domain/money/cents.ts';
import type { Estimate } from '../../../src/domain/money/estimate.ts';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';

interface EstimateInputsProps {
  readonly value: Estimate | undefined;
  readonly onCommit: (value: Estimate | undefined) => void;
  readonly likelyHint?: string;
  /** Room for three short labels only. */
  readonly narrow?: boolean;
  /** What it is the price of, for a price: then its ends can't be nothing, nor as far apart as a missing digit puts them. */
  readonly priceOf?: string;
}

/** Low, likely and high. Low and high are one in ten on either side; the likely figure alone is enough. */
export function EstimateInputs({ value, onCommit, likelyHint, narrow = false, priceOf }: EstimateInputsProps) {
  // Low or high may be typed before likely: they wait here, because an estimate without its middle is not one yet.
  const [waiting, setWaiting] = useState<{ low?: Cents; high?: Cents }>({});
  const [fault, setFault] = useState<string>();
  const low = value?.low ?? waiting.low;
  const high = value?.high ?? waiting.high;

  const put = (next: { low?: Cents | undefined; likely?: Cents | undefined; high?: Cents | undefined }) => {
    const { likely } = next;
    if (likely === undefined) {
      setWaiting({
        ...(next.low === undefined ? {} : { low: next.low }),
        ...(next.high === undefined ? {} : { high: next.high }),
      });
      setFault(
        next.low === undefined && next.high === undefined ? undefined : 'Add the likely figure, or this is not used.',
      );
      if (value !== undefined) onCommit(undefined);
      return;
    }
    const ends = {
      ...(next.low === undefined ? {} : { low: next.low }),
      ...(next.high === undefined ? {} : { high: next.high }),
    };
    const estimate = { likely, ...ends };
    const fault =
      (next.low ?? likely) > likely || likely > (next.high ?? likely)
        ? 'Low can’t be above likely, and likely can’t be above high.'
        : priceOf && rangeFault(estimate, priceOf)?.message;
    setFault(fault && `${fault} The old figures stay until these are fixed.`);
    setWaiting(fault ? ends : {});
    if (!fault) onCommit(estimate);
  };

  return (
    <div class="stack">
      <div class={narrow ? 'fields three' : 'fields'}>
        <MoneyInput
          label={narrow ? 'Low' : 'Low (1 in 10 below)'}
          value={low}
          onCommit={(next) => put({ low: next, likely: value?.likely, high })}
        />
        <MoneyInput
          label="Likely"
          value={value?.likely}
          onCommit={(likely) => put({ low, likely, high })}
          {...(likelyHint ? { hint: likelyHint } : {})}
        />
        <MoneyInput
          label={narrow ? 'High' : 'High (1 in 10 above)'}
          value={high}
          onCommit={(next) => put({ low, likely: value?.likely, high: next })}
        />
      </div>
      {fault && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}
