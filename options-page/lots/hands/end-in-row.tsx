import type { LotAct } from '../../../src/acts/act.ts';
import { Unkept } from '../../../src/ui/ask/unkept.tsx';
import { useAskedAct } from '../../../src/ui/ask/use-asked-act.ts';
import { AmountActs } from '../../now/amount-acts.tsx';
import { resultActs } from '../../now/result-acts.ts';
import type { RowPanelProps } from './row-panel.tsx';

/** How a lot ended. */
export function EndInRow({ lot, start, onClose }: RowPanelProps) {
  const { send, pending, clear } = useAskedAct(lot, start);
  const act = async (wanted: LotAct) => {
    if (await send(wanted)) onClose();
  };
  return (
    <>
      <Unkept pending={pending} onAct={act} onLeave={clear} />
      <AmountActs
        label="Hammer price"
        start={lot.facts.priceNow}
        acts={resultActs(lot.sale?.result?.entry ?? null, false)}
        onAct={act}
      />
    </>
  );
}
