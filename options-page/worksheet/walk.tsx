import type { Deal } from '../../src/domain/bid/deal.ts';
import type { MaxBid } from '../../src/domain/bid/max-bid.ts';
import type { Line } from '../../src/domain/bid/price-breakdown.ts';
import { Staircase, type Step } from '../../src/ui/staircase.tsx';
import { inputsBehind } from './inputs-behind.tsx';

/** From retail down to the max bid, dollar by dollar. */
export function Walk({ deal, result }: { deal: Deal; result: MaxBid }) {
  const { breakdown } = result;
  const steps = breakdown.steps.filter((line) => line.group !== 'slack' || line.cents !== 0);
  return (
    <figure class="stack">
      <h2>From retail down to the max bid</h2>
      <Staircase
        from={landing(breakdown.retail)}
        steps={steps.map((line): Step => {
          const inputs = inputsBehind(line, deal, breakdown);
          return {
            key: line.key,
            label: line.label,
            cents: line.cents,
            ...(line.range ? { range: line.range } : {}),
            ...(inputs === null ? {} : { inputs }),
          };
        })}
        to={{ label: result.maxBid === null ? 'Even at nothing' : 'Max bid', cents: breakdown.price }}
      />
    </figure>
  );
}

const landing = ({ label, cents, range }: Line) => ({ label, cents, ...(range ? { range } : {}) });
