import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import { CheckInput } from '../../../src/ui/inputs/check-input.tsx';
import type { LotEdit } from '../use-lot-edit.ts';
import { EstimateInputs } from './estimate-inputs.tsx';

/** Whether bids are handed in unseen, and then what the best of the others is likely to be. */
export function SealedInput({ sealed, edit }: { sealed: LotFacts['sealed']; edit: LotEdit }) {
  return (
    <div class="stack wide">
      <CheckInput
        label="Bids are sealed: the winner pays his own bid"
        value={sealed !== undefined}
        onCommit={(on) =>
          edit.commit('sealed', on ? {} : undefined, on ? 'The sale is sealed.' : 'The sale is an open one.')
        }
      />
      {sealed !== undefined && (
        <>
          <p class="small strong">Best of the other bids</p>
          <EstimateInputs
            narrow
            value={sealed.rival}
            onCommit={(rival) =>
              edit.commit('sealed', rival === undefined ? {} : { rival }, 'The other bids are kept.')
            }
          />
          {sealed.rival === undefined && (
            <p class="note small">
              Until you say what the best other bid is likely to be, the max bid is where it stops paying. In a sealed
              sale hand in less than that.
            </p>
          )}
        </>
      )}
    </div>
  );
}
