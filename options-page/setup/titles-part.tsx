import { PPM, ppm } from '../../src/domain/money/rate.ts';
import type { TitleBrand } from '../../src/domain/setup/money-rules.ts';
import { confirmedTitle, isUnconfirmed } from '../../src/domain/setup/title-figure.ts';
import { freshId } from '../../src/ui/fresh-id.ts';
import { useFocusNext } from '../../src/ui/hooks/use-focus-next.ts';
import { CheckInput } from '../../src/ui/inputs/check-input.tsx';
import { RateInput } from '../../src/ui/inputs/rate-input.tsx';
import { TextInput } from '../../src/ui/inputs/text-input.tsx';
import { removeAt, replaceAt, withField } from '../../src/ui/tables/list-edit.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { FaultsAt } from './faults-at.tsx';
import { PartFrame } from './part-frame.tsx';
import { useSetupEdit } from './setup-edit.ts';
import type { SetupPart } from './setup-parts.ts';

/** The states a title can be in, and what each leaves of a clean car's retail. */
export function TitlesPart({ part }: { part: SetupPart }) {
  const { lots } = useWorkspace();
  const { setup, change } = useSetupEdit();
  const { titles } = setup;
  const [root, focusNext] = useFocusNext<HTMLDivElement>();

  const add = () => {
    const title: TitleBrand = { id: freshId('title'), name: '', keepsPpm: ppm(700_000), floorable: false };
    focusNext(title.id);
    change({ titles: [...titles, title] }, 'Added a title.');
  };
  const remove = (index: number, title: TitleBrand) => {
    const used = lots.filter((lot) => lot.facts.titleId === title.id).length;
    const lotsSay = used === 0 ? '' : ` ${used === 1 ? '1 lot has' : `${used} lots have`} it and will need another.`;
    focusNext(titles[index + 1]?.id ?? 'add');
    change({ titles: removeAt(titles, index) }, `Removed the title ${title.name}.${lotsSay}`);
  };

  return (
    <PartFrame
      part={part}
      intro="A branded title lowers what a car retails for, and often keeps it off the floor plan. A lot with no title set is assumed clean."
      caution="What you must disclose about a brand, and which papers you need, is law and differs by state. Ask the state’s agency or a licensed advisor. The notes here are your own."
    >
      <div class="stack" ref={root}>
        {titles.length === 0 && (
          <p class="setup-prose">
            No titles yet. A made-up example: <strong>Rebuilt</strong> 75% of clean retail, can’t be floor-planned,
            needs an inspection form.
          </p>
        )}
        {titles.map((title, index) => (
          <TitleFields
            key={title.id}
            title={title}
            path={['titles', index]}
            onChange={(next, said) => change({ titles: replaceAt(titles, index, next) }, said)}
            onRemove={() => remove(index, title)}
          />
        ))}
        <p data-focus="add">
          <button type="button" onClick={add}>
            Add a title
          </button>
        </p>
      </div>
    </PartFrame>
  );
}

interface TitleFieldsProps {
  readonly title: TitleBrand;
  readonly path: readonly PropertyKey[];
  readonly onChange: (title: TitleBrand, said: string) => void;
  readonly onRemove: () => void;
}

function TitleFields({ title, path, onChange, onRemove }: TitleFieldsProps) {
  const name = title.name === '' ? 'New title' : title.name;
  const said = `Title ${name} saved.`;
  return (
    <fieldset class="panel stack" data-focus={title.id}>
      <legend class="visually-hidden">{name}</legend>
      <div class="fields">
        <TextInput
          label="Name"
          value={title.name === '' ? undefined : title.name}
          longest={80}
          required
          placeholder="Rebuilt"
          onCommit={(next = '') => onChange({ ...title, name: next }, `Title renamed ${next}.`)}
        />
        <RateInput
          label="% of clean retail"
          value={title.keepsPpm}
          required
          hint={isUnconfirmed(title) ? 'A starting figure' : title.keepsPpm === PPM ? 'All of it' : undefined}
          onCommit={(keepsPpm = ppm(PPM)) => onChange(confirmedTitle(title, keepsPpm), said)}
        />
        <TextInput
          label="Papers needed"
          value={title.paper}
          longest={400}
          wide
          onCommit={(paper) => onChange(withField(title, 'paper', paper), said)}
        />
        <TextInput
          label="Cautions"
          value={title.caution}
          longest={400}
          wide
          onCommit={(caution) => onChange(withField(title, 'caution', caution), said)}
        />
      </div>
      {isUnconfirmed(title) && (
        <p class="note warning row">
          <span>Nobody has confirmed this percentage, so cars with this title get no max bid.</span>
          <button
            type="button"
            onClick={() => onChange(confirmedTitle(title, title.keepsPpm), `${name}: percentage confirmed.`)}
          >
            {(title.keepsPpm / PPM) * 100}% is right
            <span class="visually-hidden"> for {name}</span>
          </button>
        </p>
      )}
      <div class="row apart">
        <CheckInput
          label="Can go on the floor plan"
          value={title.floorable}
          onCommit={(floorable) => onChange({ ...title, floorable }, said)}
        />
        <button type="button" class="plain" onClick={onRemove} aria-label={`Remove ${name}`}>
          Remove
        </button>
      </div>
      <FaultsAt path={path} />
    </fieldset>
  );
}
