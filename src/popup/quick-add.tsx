import { useState } from 'preact/hooks';
import { wordsOfDoubt } from '../domain/close/doubt-words.ts';
import { readCloseTime } from '../domain/close/read-close-time.ts';
import { sayClose } from '../domain/close/say-close.ts';
import type { LotFacts } from '../domain/lot/lot.ts';
import type { Cents } from '../domain/money/cents.ts';
import type { Setup } from '../domain/setup/setup.ts';
import type { CloseTime } from '../domain/time/close-time.ts';
import { instant } from '../domain/time/instant.ts';
import { readVin } from '../domain/vin/read-vin.ts';
import type { LotState } from '../folds/lot-state.ts';
import type { Store } from '../store/store.ts';
import { ChoiceInput } from '../ui/inputs/choice-input.tsx';
import { MoneyInput } from '../ui/inputs/money-input.tsx';
import { ReadInput } from '../ui/inputs/read-input.tsx';
import { TextInput } from '../ui/inputs/text-input.tsx';

interface QuickAddProps {
  readonly store: Store;
  readonly setup: Setup;
  readonly onAdded: (lot: LotState) => void;
}

/** The few things a lot needs to get its number; the rest can be said on its worksheet. */
export function QuickAdd({ store, setup, onAdded }: QuickAddProps) {
  const [facts, setFacts] = useState<LotFacts>({});
  const [said, setSaid] = useState<string>();
  const put = <Field extends keyof LotFacts>(field: Field, value: LotFacts[Field] | undefined) =>
    setFacts(({ [field]: _, ...rest }) => (value === undefined ? rest : { ...rest, [field]: value }));
  const venue = setup.venues.find(({ id }) => id === facts.venueId);
  const named = facts.vin !== undefined || facts.model !== undefined;

  const keep = async () => {
    const evidence = Object.fromEntries(
      Object.keys(facts).map((field) => [field, { from: 'typed', text: '', sure: 'certain' } as const]),
    );
    const added = await store.addLots('typed', [{ facts, evidence }]);
    if (!added.ok) return setSaid(added.message);
    const id = added.value.lots[0];
    const lot = id === undefined ? null : await store.lot(id);
    setFacts({});
    setSaid('Added to your list.');
    if (lot !== null) onAdded(lot);
  };

  return (
    <details class="quick-add">
      <summary class="strong">Add a lot</summary>
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          keep().catch((error: unknown) => setSaid(String(error)));
        }}
      >
        <div class="fields">
          <TextInput label="VIN" value={facts.vin} longest={40} read={readVin} onCommit={(vin) => put('vin', vin)} />
          <TextInput
            label="Car"
            value={facts.model}
            placeholder="Year, make, model"
            onCommit={(car) => put('model', car)}
          />
          <ChoiceInput
            label="Venue"
            value={facts.venueId}
            none="Not set"
            choices={setup.venues.map(({ id, name }) => ({ value: id, label: name }))}
            onCommit={(id) => put('venueId', id)}
          />
          <ReadInput<CloseTime>
            label="Closes"
            value={facts.close}
            write={(close) => close.text}
            read={(text) =>
              readCloseTime(text, {
                now: instant(Date.now()),
                storeZone: setup.store.zone,
                ...(venue === undefined ? {} : { venueZone: venue.zone }),
              })
            }
            placeholder="Sat 2:05 PM ET"
            hint={
              facts.close &&
              `${sayClose(facts.close, setup.store.zone, instant(Date.now()))} store time. ${wordsOfDoubt(facts.close)}`
            }
            onCommit={(close) => put('close', close)}
          />
          <MoneyInput label="Price now" value={facts.priceNow} onCommit={(price) => put('priceNow', price)} />
          <MoneyInput
            label="Likely retail"
            value={facts.retail?.likely}
            onCommit={(likely: Cents | undefined) => put('retail', likely === undefined ? undefined : { likely })}
          />
        </div>
        <div class="row">
          <button type="submit" class="main" disabled={!named}>
            Watch this lot
          </button>
          <span role="status" class="small">
            {said ?? (named ? '' : 'A VIN or a name is enough.')}
          </span>
        </div>
      </form>
    </details>
  );
}
