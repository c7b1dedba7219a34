import { useMemo } from 'preact/hooks';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { useSaleLog } from '../../../src/ui/hooks/use-sale-log.ts';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { standingsUnder } from '../../../src/views/lots/standing.ts';

/** The proxy that stands at the sale. Each change of it is kept as a receipt: placed, raised, cut or withdrawn. */
export function ProxyInput({ lot }: { lot: LotState }) {
  const { setup, say } = useWorkspace();
  const standings = useMemo(() => standingsUnder(setup), [setup]);
  const log = useSaleLog(standings.of);
  return (
    <MoneyInput
      label="Proxy placed"
      value={lot.facts.proxy}
      hint="What you entered at the venue. Headroom never bids."
      onCommit={async (amount) => {
        const sentence = await log.proxy(lot, amount === 0 ? undefined : amount);
        if (sentence !== null) say(sentence);
      }}
    />
  );
}
