import type { LotAppraisal } from '../../../src/domain/appraisal/appraise.ts';
import { applyCeilings } from '../../../src/domain/retail/ceiling.ts';
import type { Instant } from '../../../src/domain/time/instant.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { Fold } from '../fold.tsx';
import type { LotEdit } from '../use-lot-edit.ts';
import { AdjustmentGrid } from './adjustment-grid.tsx';
import { Ceilings } from './ceilings.tsx';
import { CompsTable } from './comps-table.tsx';
import { RangeCurve } from './range-curve.tsx';
import { basisWords, rangeWords, whole } from './retail-words.ts';

export interface RetailPartProps {
  readonly lot: LotState;
  readonly edit: LotEdit;
  readonly appraisal: LotAppraisal;
  readonly now: Instant;
}

/** What it will retail for, how sure that is, and every car that says so. */
export function RetailPart({ lot, edit, appraisal, now }: RetailPartProps) {
  const { setup } = useWorkspace();
  const { retail } = appraisal;
  const { comps = [], ceilings = [], retail: guess } = lot.facts;
  return (
    <Fold
      id="retail"
      title="Retail"
      result={
        retail === undefined ? (
          <span class="missing">no figure yet</span>
        ) : (
          <>
            <strong>{whole(retail.mean)}</strong>, {rangeWords(retail)}
            <span class="quiet">{basisWords(retail)}</span>
          </>
        )
      }
    >
      {() => (
        <>
          {retail && <RangeCurve retail={retail} guess={guess?.likely} />}
          {retail?.hints
            .filter((hint) => hint.index === undefined)
            .map((hint) => (
              <p key={hint.kind} class="small quiet">
                {hint.message}
              </p>
            ))}
          <div class="stack">
            <h3>Cars like it</h3>
            {comps.length === 0 && (
              <p class="quiet">
                Cars that sold or are for sale make the figure more certain. Each is adjusted to this lot’s miles and
                year, and your estimate counts beside them.
              </p>
            )}
            <CompsTable
              comps={comps}
              retail={retail}
              today={dateIn(setup.store.zone, now)}
              onChange={(next, said) => edit.commit('comps', next.length === 0 ? undefined : next, said)}
            />
            {retail?.grid && <AdjustmentGrid grid={retail.grid} guess={guess} />}
          </div>
          <Ceilings
            ceilings={ceilings}
            applied={applyCeilings(ceilings)}
            onChange={(next, said) => edit.commit('ceilings', next, said)}
          />
        </>
      )}
    </Fold>
  );
}
