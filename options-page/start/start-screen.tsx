import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { cents } from '../../src/domain/money/cents.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import { DEMO_HREF } from '../../src/ui/demo-mode.ts';
import { freshId } from '../../src/ui/fresh-id.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { type FirstDraft, firstResult } from '../../src/views/start/first-draft.ts';
import { FirstCar } from './first-car.tsx';
import { FirstRule } from './first-rule.tsx';
import { FirstStore } from './first-store.tsx';
import { FirstVenue } from './first-venue.tsx';
import './start.css';

/** A common increment; the page shows it and it can be changed there. */
const STARTING_STEP = cents(10_000);

/** The first five minutes on one page: who, where, what it costs there, what a deal must earn, and a first car. */
export function StartScreen() {
  const { setupKept } = useWorkspace();
  // As it was when the page opened: what is saved here must not take the page away.
  const [before] = useState(setupKept);
  return before ? <AlreadySetUp /> : <FirstPage />;
}

function FirstPage() {
  const { setup, store, saveSetup, addLot, say } = useWorkspace();
  const [ids] = useState(() => ({ venue: freshId('venue'), fees: freshId('fees') }));
  const [author, setAuthor] = useState<string>();
  const [draft, setDraft] = useState<FirstDraft>(() => ({
    zone: setup.store.zone,
    venueZone: setup.store.zone,
    step: STARTING_STEP,
    profit: setup.rules.dollarsCents,
    lossChance: setup.rules.lossChancePpm,
    titleId: 'clean',
  }));
  const put = (set: Partial<FirstDraft>) => setDraft((before) => ({ ...before, ...set }));
  const result = useMemo(() => firstResult(draft, setup, ids), [draft, setup, ids]);
  const latest = useRef(result);
  latest.current = result;
  const form = useRef<HTMLFormElement>(null);
  const [saving, setSaving] = useState(false);

  useEffect(() => {
    form.current?.querySelector('input')?.focus();
  }, []);

  /** What to say once it is done, or why it was not. */
  const save = async (): Promise<string> => {
    // The box that was left by this very press is read first.
    await new Promise((resolve) => setTimeout(resolve));
    const unreadable = form.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
    if (unreadable) {
      unreadable.focus();
      return 'One of the answers can’t be read. Fix it, then save.';
    }
    const { setup: set, facts } = latest.current;
    const named = author === undefined ? null : await store.setAuthor(author);
    const kept = named?.ok === false ? named : await saveSetup(set);
    if (!kept.ok) return kept.message;
    if (facts === undefined) {
      location.assign('#/lots');
      return 'Your setup is saved.';
    }
    const evidence = Object.fromEntries(
      Object.keys(facts).map((field) => [field, { from: 'typed', text: '', sure: 'certain' } as const]),
    );
    const added = await addLot('typed', { facts, evidence });
    if (!added.ok) return added.message;
    location.assign(`#/lot/${added.value.id}`);
    return 'Your setup and your first lot are saved.';
  };

  return (
    <form
      class="start-page stack loose"
      ref={form}
      onSubmit={(event) => {
        event.preventDefault();
        save()
          .then(say, (error: unknown) => say(String(error)))
          .finally(() => setSaving(false));
      }}
    >
      <header class="stack">
        <h1>Start here</h1>
        <p>
          Headroom works out the most you can pay for a car and still make the deal worth doing. Answer what you know.
          What you leave blank is never counted as $0: there is no max bid until it is filled in.
        </p>
        <p class="small">
          Got a setup from another computer? <a href="#/setup/file">Load its file</a>. A backup?{' '}
          <a href="#/backup">Restore it</a>. Just looking? <a href={DEMO_HREF}>Open the demo</a>.
        </p>
      </header>
      <FirstStore draft={draft} put={put} author={author} onAuthor={setAuthor} />
      <FirstVenue draft={draft} put={put} />
      <FirstRule draft={draft} put={put} carrying={setup.carrying} />
      <FirstCar draft={draft} put={put} titles={setup.titles} />
      <section class="panel stack start-result" aria-live="polite" aria-label="Max bid of the first car">
        {result.maxBid === undefined ? (
          <p>
            <strong>No max bid yet.</strong> Still missing: {result.missing.join(', ')}.
          </p>
        ) : (
          <p>
            Max bid{' '}
            <strong class="figure-large">{result.maxBid === null ? 'Don’t bid' : formatMoney(result.maxBid)}</strong>
          </p>
        )}
        <p class="row">
          <button type="submit" class="main" disabled={saving}>
            Save and go on
          </button>
          <span class="small quiet">Everything can be changed later, under Setup and on the worksheet.</span>
        </p>
      </section>
    </form>
  );
}

function AlreadySetUp() {
  return (
    <section class="stack">
      <h1>You have set up already</h1>
      <p class="row">
        <a class="button main" href="#/lots">
          To the lots
        </a>
        <a class="button" href="#/setup">
          Change the setup
        </a>
      </p>
    </section>
  );
}
