import { useState } from 'preact/hooks';
import { openCompanion } from '../../browser/pages.ts';
import { compOfDraft } from '../../capture/draft/comp-of-draft.ts';
import type { DraftLot } from '../../capture/draft/draft-lot.ts';
import { sayClose } from '../../domain/close/say-close.ts';
import { carName, lotTitle } from '../../domain/lot/car-name.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { instant } from '../../domain/time/instant.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { KeptLot, PageDesk } from '../../reading/page-desk.ts';
import { ChoiceInput } from '../../ui/inputs/choice-input.tsx';
import { StandingNow } from './standing-now.tsx';

interface CompOfferProps {
  readonly desk: PageDesk;
  readonly drafts: readonly DraftLot[];
  readonly readAt: Instant;
}

/** Cars with a price on them say what a lot may bring: adds what was read to a watched lot's comparables. */
export function CompOffer({ desk, drafts, readAt }: CompOfferProps) {
  const { setup, site } = desk;
  const [open, setOpen] = useState<readonly LotState[]>();
  const [chosen, setChosen] = useState<LotId>();
  const [kept, setKept] = useState<KeptLot>();
  const [said, setSaid] = useState('');
  const seen = { site, date: dateIn(setup.store.zone, readAt) };
  const comps = drafts.flatMap((draft) => compOfDraft(draft, seen) ?? []);
  const [first] = comps;
  if (first === undefined) return null;
  const alike = (lot: LotState) =>
    drafts.some(({ fields }) => fields.model?.readings[0]?.value.toLowerCase() === lot.facts.model?.toLowerCase());
  const choices = [...(open ?? [])].sort((a, b) => Number(alike(b)) - Number(alike(a)));
  const add = async (lot: LotId) => {
    const answer = await desk.addComps(lot, comps);
    if (!answer.ok) return setSaid(answer.message);
    setKept(answer.value);
    setSaid(`Added ${comps.length === 1 ? 'one comparable' : `${comps.length} comparables`}.`);
  };
  const takeBack = async (done: KeptLot) => {
    const answer = await done.undo();
    setSaid(answer.ok ? 'Undone.' : answer.message);
    if (answer.ok) setKept(undefined);
  };
  return (
    <details onToggle={() => open === undefined && desk.openLots().then(setOpen, reportError)}>
      <summary class="small">
        {comps.length === 1 ? 'Use as a comparable' : `Use these ${comps.length} as comparables`}
      </summary>
      <div class="stack draft-behind">
        <p class="small quiet">
          {comps.length === 1
            ? `As an asking price of ${formatMoney(first.price)}, seen today.`
            : 'As asking prices, seen today.'}{' '}
          The worksheet shows each step from there to the lot.
        </p>
        {open?.length === 0 ? (
          <p class="small">You have no open lots. Add the lot you want to value first.</p>
        ) : (
          <ChoiceInput
            label="For which lot"
            value={chosen}
            none="Choose"
            choices={choices.map((lot) => ({ value: lot.id, label: labelOf(lot, desk) }))}
            onCommit={(id) => {
              setChosen(choices.find((lot) => lot.id === id)?.id);
              setKept(undefined);
              setSaid('');
            }}
          />
        )}
        <div class="row">
          {kept === undefined ? (
            <button
              type="button"
              disabled={chosen === undefined}
              onClick={() => chosen !== undefined && add(chosen).catch((error: unknown) => setSaid(String(error)))}
            >
              Add to its comparables
            </button>
          ) : (
            <>
              <button type="button" onClick={() => openCompanion(`#/lot/${kept.lot.id}`).then(() => window.close())}>
                Open its worksheet
              </button>
              <button type="button" onClick={() => void takeBack(kept)}>
                Undo
              </button>
            </>
          )}
          <span role="status" class="small">
            {said}
          </span>
        </div>
        {kept !== undefined && (
          <div>
            <p class="small strong">{lotTitle(kept.lot.facts)}</p>
            <StandingNow lot={kept.lot} setup={setup} />
          </div>
        )}
      </div>
    </details>
  );
}

const labelOf = ({ facts }: LotState, { setup }: PageDesk): string =>
  [
    carName(facts) || lotTitle(facts),
    facts.lotNumber && `lot ${facts.lotNumber}`,
    facts.close && sayClose(facts.close, setup.store.zone, instant(Date.now())),
  ]
    .filter(Boolean)
    .join(' · ');
