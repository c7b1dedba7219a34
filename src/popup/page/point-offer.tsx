import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { DraftFieldName } from '../../capture/draft/draft-lot.ts';
import { ChoiceInput } from '../../ui/inputs/choice-input.tsx';
import { DRAFT_FIELDS } from './draft-words.ts';

interface PointOfferProps {
  readonly onPoint: (name: DraftFieldName, what: string) => void;
  /** Why one would. */
  readonly children: ComponentChildren;
}

/** Lets the user point at any field where no row of a draft offers it. */
export function PointOffer({ onPoint, children }: PointOfferProps) {
  const [name, setName] = useState<DraftFieldName>('vin');
  const chosen = DRAFT_FIELDS.find((field) => field.name === name);
  return (
    <div class="stack small" role="group" aria-label="Point at it on the page">
      <p>{children}</p>
      <div class="row point-offer">
        <ChoiceInput
          label="Field to point at"
          value={name}
          choices={DRAFT_FIELDS.map((field) => ({ value: field.name, label: field.label }))}
          onCommit={(value) => setName(DRAFT_FIELDS.find((field) => field.name === value)?.name ?? name)}
        />
        <button type="button" onClick={() => chosen !== undefined && onPoint(chosen.name, chosen.what)}>
          Point at it
        </button>
      </div>
    </div>
  );
}
