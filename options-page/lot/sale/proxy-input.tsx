import { useState } from 'preact/hooks';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { Unkept } from '../../../src/ui/ask/unkept.tsx';
import { useAskedAct } from '../../../src/ui/ask/use-asked-act.ts';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';

/** The proxy that stands at the sale. Each change of it is kept as a receipt: placed, raised, cut or withdrawn. */
export function ProxyInput({ lot }: { lot: LotState }) {
  const { send, pending, clear } = useAskedAct(lot);
  const [left, setLeft] = useState(0);
  const { proxy } = lot.facts;
  const asked = pending?.act.do === 'bid' ? pending.act.cents : undefined;
  return (
    <>
      <MoneyInput
        key={left}
        label="Proxy placed"
        value={proxy}
        hint="What you entered at the venue. Headroom never bids."
        onCommit={(amount) => {
          // Leaving the box for the question below it is no second answer.
          if (amount !== undefined && amount === asked) return;
          if (amount === undefined) void send({ do: 'withdraw' });
          else void send({ do: 'bid', how: 'proxy', cents: amount, was: proxy ?? null });
        }}
      />
      {proxy !== undefined && (
        <button type="button" class="plain" onClick={() => void send({ do: 'withdraw' })}>
          Withdraw
        </button>
      )}
      <Unkept
        pending={pending}
        onAct={send}
        onLeave={(then) => {
          clear();
          // What was typed stays where it is to be changed; where it was dropped, the box shows what stands.
          if (then !== 'edit') setLeft(left + 1);
        }}
      />
    </>
  );
}
