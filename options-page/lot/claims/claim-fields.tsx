import { chanceFalse } from '../../../src/domain/claims/doubt-lines.ts';
import type { Check } from '../../../src/domain/claims/next-check.ts';
import { CLAIM_ABOUT, CLAIM_EVIDENCE } from '../../../src/domain/lot/claim.ts';
import { ZERO } from '../../../src/domain/money/cents.ts';
import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { PPM } from '../../../src/domain/money/rate.ts';
import { rateOf } from '../../../src/domain/money/rounding.ts';
import type { Doubt } from '../../../src/domain/retail/estimation.ts';
import { ChoiceInput } from '../../../src/ui/inputs/choice-input.tsx';
import { MoneyInput } from '../../../src/ui/inputs/money-input.tsx';
import { RateInput } from '../../../src/ui/inputs/rate-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { withField } from '../../../src/ui/tables/list-edit.ts';
import { percentWords } from '../risk/risk-words.ts';
import { ABOUT_WORDS, type ClaimDraft, EVIDENCE_CHOICES } from './claim-words.ts';

export interface ClaimFieldsProps {
  readonly index: number;
  readonly claim: ClaimDraft;
  readonly doubt: Doubt;
  /** What a look at it is worth; absent where nothing can be learned or it is not complete. */
  readonly check: Check | undefined;
  readonly onChange: (claim: ClaimDraft) => void;
  readonly onRemove: () => void;
}

/** One statement of the listing: what it says, what there is to show for it, and what it costs to doubt it. */
export function ClaimFields({ index, claim, doubt, check, onChange, onRemove }: ClaimFieldsProps) {
  const name = claim.statement ?? 'new statement';
  return (
    <fieldset class="recon-line" data-focus={`claim-${index}`}>
      <legend class="visually-hidden">Statement: {name}</legend>
      <div class="fields four">
        <ChoiceInput
          label="About"
          value={claim.about}
          choices={CLAIM_ABOUT.map((about) => ({ value: about, label: ABOUT_WORDS[about] }))}
          onCommit={(about) => onChange({ ...claim, about: CLAIM_ABOUT.find((one) => one === about) ?? 'other' })}
        />
        <div class="two">
          <TextInput
            label="The listing says"
            value={claim.statement}
            required={claim.worthIfFalse !== undefined}
            placeholder="Manual transmission"
            onCommit={(statement) => onChange(withField(claim, 'statement', statement))}
          />
        </div>
        <ChoiceInput
          label="Evidence"
          value={claim.evidence}
          choices={EVIDENCE_CHOICES}
          onCommit={(evidence) =>
            onChange({ ...claim, evidence: CLAIM_EVIDENCE.find((one) => one === evidence) ?? 'stated' })
          }
        />
        <MoneyInput
          label="Worth less if false"
          value={claim.worthIfFalse}
          required={claim.statement !== undefined && claim.worthIfFalse !== undefined}
          onCommit={(worth) => onChange(withField(claim, 'worthIfFalse', worth))}
        />
        <RateInput
          label="Chance it is false"
          value={claim.chanceFalse}
          hint={chanceHint(claim, doubt)}
          onCommit={(chance) => onChange(withField(claim, 'chanceFalse', chance))}
        />
        <div class="two">
          <TextInput
            label="What you saw, who you asked"
            value={claim.note}
            longest={400}
            onCommit={(note) => onChange(withField(claim, 'note', note))}
          />
        </div>
      </div>
      <div class="row apart">
        <p>{costWords(claim, doubt, check)}</p>
        <button type="button" class="plain" aria-label={`Remove the statement ${name}`} onClick={onRemove}>
          Remove
        </button>
      </div>
    </fieldset>
  );
}

function chanceHint(claim: ClaimDraft, doubt: Doubt): string {
  if (claim.evidence === 'refuted') return 'It is false, whatever you enter here';
  if (claim.chanceFalse !== undefined) return 'Your own figure';
  const usual = chanceFalse({ ...claim, statement: '', worthIfFalse: ZERO }, doubt);
  return `${percentWords(usual / PPM)}, from its evidence`;
}

function costWords(claim: ClaimDraft, doubt: Doubt, check: Check | undefined) {
  const { statement, worthIfFalse } = claim;
  if (statement === undefined || worthIfFalse === undefined) {
    return (
      <span class="missing">{statement === undefined ? 'enter what the listing says' : 'enter what it is worth'}</span>
    );
  }
  const chance = chanceFalse({ ...claim, statement, worthIfFalse }, doubt);
  const cost = rateOf(worthIfFalse, chance);
  return (
    <>
      {percentWords(chance / PPM)} of {formatMoney(worthIfFalse)} = <strong>{formatMoney(cost)}</strong> of doubt.{' '}
      {check?.sentence}
    </>
  );
}
