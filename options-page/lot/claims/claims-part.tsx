import { useMemo, useState } from 'preact/hooks';
import type { LotAppraisal } from '../../../src/domain/appraisal/appraise.ts';
import { claimSchema } from '../../../src/domain/lot/claim.ts';
import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import { type Cents, cents } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { DEFAULT_ESTIMATION } from '../../../src/domain/retail/estimation.ts';
import type { PricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { standingOf } from '../../../src/domain/worksheet/worksheet-of.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { Fold } from '../fold.tsx';
import type { LotEdit } from '../use-lot-edit.ts';
import { ClaimFields } from './claim-fields.tsx';
import { type ClaimDraft, likelyStatement } from './claim-words.ts';

export interface ClaimsPartProps {
  readonly lot: LotState;
  readonly edit: LotEdit;
  readonly appraisal: LotAppraisal;
  readonly context: PricingContext;
  readonly maxBid: Cents | null;
}

/** What the listing states that carries money, how far each is believed, and what the doubt takes off the max bid. */
export function ClaimsPart({ lot, edit, appraisal, context, maxBid }: ClaimsPartProps) {
  const { claims = [] } = lot.facts;
  const off = useMemo(() => takenOff(lot.facts, context, maxBid), [lot.facts, context, maxBid]);
  const check = appraisal.checks[0];
  return (
    <Fold
      id="claims"
      title="Doubts"
      result={
        claims.length === 0 ? (
          <span class="quiet">Everything in the listing is assumed true</span>
        ) : (
          <>
            {off === undefined ? (
              `${claims.length} ${claims.length === 1 ? 'statement' : 'statements'} carry money`
            ) : (
              <>
                <strong>{formatMoney(off)}</strong> off the max bid
              </>
            )}
            {check && <span class="quiet">{check.sentence}</span>}
          </>
        )
      }
    >
      {() => <Claims lot={lot} edit={edit} appraisal={appraisal} context={context} />}
    </Fold>
  );
}

/** How much higher the max bid would be if nobody doubted anything; undefined where there is none. */
function takenOff(facts: LotFacts, context: PricingContext, maxBid: Cents | null): Cents | undefined {
  if (maxBid === null || (facts.claims ?? []).length === 0) return undefined;
  const { claims: _doubted, ...believed } = facts;
  const standing = standingOf(believed, context);
  return standing.ok && standing.value.maxBid !== null ? cents(standing.value.maxBid - maxBid) : undefined;
}

function Claims({ lot, edit, appraisal, context }: Omit<ClaimsPartProps, 'maxBid'>) {
  const { claims = [] } = lot.facts;
  const { doubt } = context.setup.estimation ?? DEFAULT_ESTIMATION;
  const [draft, setDraft] = useState<ClaimDraft>();
  const [root, focusNext] = useFocusNext<HTMLDivElement>();
  const change = (index: number, next: ClaimDraft) => {
    const isNew = index === claims.length;
    const about = isNew && next.about !== draft?.about ? likelyStatement(next.about, lot.facts) : undefined;
    const filled = about === undefined || draft?.statement !== undefined ? next : { ...next, statement: about };
    const claim = claimSchema.safeParse(filled);
    if (!claim.success) {
      if (isNew) setDraft(filled);
      return;
    }
    if (isNew) setDraft(undefined);
    edit.commit('claims', isNew ? [...claims, claim.data] : replaceAt(claims, index, claim.data), 'Statement saved.');
  };
  const remove = (index: number) => {
    focusNext('add');
    if (index === claims.length) return setDraft(undefined);
    const rest = removeAt(claims, index);
    return edit.commit('claims', rest.length === 0 ? undefined : rest, 'Statement removed.');
  };
  const all: readonly ClaimDraft[] = draft === undefined ? claims : [...claims, draft];
  return (
    <div class="stack" ref={root}>
      {all.length === 0 && (
        <p class="quiet">
          A listing states things that carry money: transmission, drive, trim, title, mileage. Enter how much less the
          car is worth if one of them is false. The doubt is counted until somebody has looked.
        </p>
      )}
      {all.map((claim, index) => (
        <ClaimFields
          key={index}
          index={index}
          claim={claim}
          doubt={doubt}
          check={appraisal.checks.find((one) => one.index === index)}
          onChange={(next) => change(index, next)}
          onRemove={() => remove(index)}
        />
      ))}
      <p data-focus="add">
        <button
          type="button"
          disabled={draft !== undefined || claims.length >= 50}
          onClick={() => {
            focusNext(`claim-${claims.length}`);
            setDraft({ about: 'transmission', evidence: 'stated' });
          }}
        >
          Add a statement
        </button>
      </p>
      {appraisal.checks.length > 0 && (
        <p class="quiet small">
          “Worth up to” is what a check is worth at the max bid, where it matters most: the chance the statement is
          false, times the chance it is true, times what it would cost.
        </p>
      )}
    </div>
  );
}
