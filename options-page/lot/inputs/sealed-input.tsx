import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import { CheckInput } from '../../../src/ui/inputs/check-input.tsx';
import type { LotEdit } from '../use-lot-edit.ts';
import { EstimateInputs } from './estimate-inputs.tsx';

/** Whether bids are handed in unseen, and then what the best of the others is likely to be. */
export function SealedInput({ sealed, edit }: { sealed: LotFacts['sealed']; edit: LotEdit }) {
  return (
    <div class="stack wide">
      <CheckInput
        label="Sealed bids: the winner pays his own bid"
        value={sealed !== undefined}
        onCommit={(on) =>
          edit.commit('sealed', on ? {} : undefined, on ? 'Set as a sealed sale.' : 'Set as an open sale.')
        }
      />
      {sealed !== undefined && (
        <>
          <p class="small strong">Best other bid</p>
          <EstimateInputs
            narrow
            priceOf="the best other bid"
            value={sealed.rival}
            onCommit={(rival) => edit.commit('sealed', rival === undefined ? {} : { rival }, 'Other bids saved.')}
          />
          {sealed.rival === undefined && (
            <p class="note small">
              Until you enter the likely best other bid, the max bid is the most the car is worth to you. In a sealed
              sale, bid less than that.
            </p>
          )}
        </>
      )}
    </div>
  );
}
