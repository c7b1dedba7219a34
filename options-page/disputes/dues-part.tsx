import { useState } from 'preact/hooks';
import type { DisputeDue } from '../../src/domain/after-sale/dispute-due.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { DueText, WhyDue } from '../../src/ui/after-sale/due-text.tsx';
import { useAfterVerbs } from '../../src/ui/hooks/use-after-verbs.ts';
import { MomentInput } from '../../src/ui/inputs/moment-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { ShownDispute } from '../../src/views/after-sale/shown-dispute.ts';

/** What is to be done and until when, each done with a tap, and the way to set the next date. */
export function DuesPart({ shown, now }: { shown: ShownDispute; now: Instant }) {
  const { dues, place, dispute } = shown;
  return (
    <section class="stack">
      <h2>To do</h2>
      {dues.length === 0 && <p>Waiting for their answer. Add it to the record when they set a date.</p>}
      <ul class="won-steps">
        {dues.map((each) => (
          <li key={each.kind} class="won-step">
            <span class="strong">{each.what}</span>
            <DueText due={each.due} now={now} place={place} />
            <span class="quiet small">
              {each.due.as === 'no-rule' ? (
                <>
                  Setup has no deadline for {place.name}. <a href="#/setup/after">Copy it from the venue’s terms</a>.
                </>
              ) : (
                <WhyDue due={each.due} />
              )}
            </span>
            <span class="no-print">
              <DueTap shown={shown} each={each} />
            </span>
          </li>
        ))}
      </ul>
      {dispute.next === undefined && <NextForm shown={shown} />}
    </section>
  );
}

function DueTap({ shown: { lot, dispute }, each }: { shown: ShownDispute; each: DisputeDue }) {
  const { note } = useAfterVerbs();
  const at = () => instant(Date.now());
  if (each.kind === 'next') {
    const done = () =>
      note(lot, { kind: 'dispute-changed', dispute: dispute.entry, set: {}, clear: ['next'] }, `Done: ${each.what}.`);
    return (
      <button type="button" onClick={done}>
        Done
      </button>
    );
  }
  const what = each.kind === 'tell' ? 'told' : 'answered';
  return (
    <button
      type="button"
      class="main"
      onClick={() => note(lot, { kind: 'dispute-stepped', dispute: dispute.entry, step: { what, at: at() } })}
    >
      {each.kind === 'tell' ? 'Claim filed' : 'Claim answered'}
    </button>
  );
}

/** Where the other side sets a date: an inspection, an answer. */
function NextForm({ shown: { lot, dispute } }: { shown: ShownDispute }) {
  const { setup } = useWorkspace();
  const { note } = useAfterVerbs();
  const [what, setWhat] = useState('');
  const [at, setAt] = useState<Instant>();
  const [fault, setFault] = useState<string>();
  const keep = async () => {
    if (what.trim() === '' || at === undefined) return setFault('Enter what to do and by when.');
    setFault(undefined);
    const set = { next: { what: what.trim(), at } };
    const entry = await note(lot, { kind: 'dispute-changed', dispute: dispute.entry, set, clear: [] }, 'Date saved.');
    if (entry !== null) {
      setWhat('');
      setAt(undefined);
    }
  };
  return (
    <div class="stack no-print">
      <div class="row dispute-line">
        <div class="field">
          <label class="label" for="dispute-next">
            Next step
          </label>
          <input
            id="dispute-next"
            value={what}
            maxLength={200}
            placeholder="Take it to the venue’s shop"
            onInput={(event) => setWhat(event.currentTarget.value)}
          />
        </div>
        <MomentInput label="By when" value={at} zone={setup.store.zone} onChange={setAt} />
        <button type="button" onClick={keep}>
          Save
        </button>
      </div>
      {fault && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}
