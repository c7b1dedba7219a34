import { useState } from 'preact/hooks';
import type { CLEARABLE, DisputeChange } from '../../src/domain/dispute/dispute.ts';
import { REASON_WORDS } from '../../src/domain/dispute/reason-words.ts';
import { DISPUTE_REASONS } from '../../src/domain/setup/after-sale-rules.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { useAfterVerbs } from '../../src/ui/hooks/use-after-verbs.ts';
import { ChoiceInput } from '../../src/ui/inputs/choice-input.tsx';
import { MomentInput } from '../../src/ui/inputs/moment-input.tsx';
import { MoneyInput } from '../../src/ui/inputs/money-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { ShownDispute } from '../../src/views/after-sale/shown-dispute.ts';

/** The particulars, when they turn out otherwise. */
export function Changes({ shown: { lot, dispute } }: { shown: ShownDispute }) {
  const { setup } = useWorkspace();
  const { note } = useAfterVerbs();
  const [dueAt, setDueAt] = useState<Instant | undefined>(dispute.dueAt);
  const change = (set: DisputeChange, clear: (typeof CLEARABLE)[number][] = []) =>
    note(lot, { kind: 'dispute-changed', dispute: dispute.entry, set, clear }, 'Saved.');
  return (
    <section class="panel stack">
      <h2>Details</h2>
      <div class="fields">
        <ChoiceInput
          label="What it is about"
          value={dispute.reason}
          choices={DISPUTE_REASONS.map((value) => ({ value, label: REASON_WORDS[value] }))}
          onCommit={(chosen) => {
            const reason = DISPUTE_REASONS.find((each) => each === chosen);
            if (reason !== undefined && reason !== dispute.reason) change({ reason });
          }}
        />
        <MoneyInput
          label="Amount claimed"
          value={dispute.askedCents}
          onCommit={(askedCents) => (askedCents === undefined ? change({}, ['askedCents']) : change({ askedCents }))}
        />
        <MomentInput
          label="Deadline they named"
          value={dueAt}
          zone={setup.store.zone}
          onChange={setDueAt}
          hint="Overrides the venue’s rule"
        />
      </div>
      {dueAt !== dispute.dueAt && (
        <p>
          <button type="button" onClick={() => (dueAt === undefined ? change({}, ['dueAt']) : change({ dueAt }))}>
            {dueAt === undefined ? 'Use the venue’s rule' : 'Set the deadline'}
          </button>
        </p>
      )}
    </section>
  );
}
