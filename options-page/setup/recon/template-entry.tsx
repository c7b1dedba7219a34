import type { ReconTemplate } from '../../../src/domain/setup/recon-template.ts';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { withField } from '../../../src/ui/tables/list-edit.ts';
import { templateSum } from '../../../src/views/lots/recon-offers.ts';
import { countWords } from '../../../src/views/words/count-words.ts';
import { EntryFold } from '../entry-fold.tsx';
import { FaultsAt } from '../faults-at.tsx';
import { TemplateLines } from './template-lines.tsx';

export interface TemplateEntryProps {
  readonly template: ReconTemplate;
  readonly path: readonly PropertyKey[];
  readonly openAtFirst: boolean;
  readonly onChange: (template: ReconTemplate, said: string) => void;
  readonly onRemove: () => void;
}

/** One template: what it is called, which cars it is for, and its lines. */
export function TemplateEntry({ template, path, openAtFirst, onChange, onRemove }: TemplateEntryProps) {
  const name = template.name === '' ? 'New template' : template.name;
  const said = `Template ${name} saved.`;
  return (
    <EntryFold title={name} summary={summaryOf(template)} path={path} openAtFirst={openAtFirst} focusKey={template.id}>
      <div class="fields">
        <div data-focus={`${template.id}-name`}>
          <TextInput
            label="Name"
            value={template.name === '' ? undefined : template.name}
            longest={80}
            required
            placeholder="Cargo van, over 80,000 miles"
            onCommit={(next = '') => onChange({ ...template, name: next }, `Template renamed ${next}.`)}
          />
          <FaultsAt path={[...path, 'name']} />
        </div>
        <TextInput
          label="Class of car"
          value={template.carClass}
          longest={80}
          placeholder="Cargo van"
          onCommit={(carClass) => onChange(withField(template, 'carClass', carClass), said)}
        />
        <TextInput
          label="Models in this class"
          value={template.models?.join(', ')}
          longest={2000}
          wide
          hint="Separate them with commas. The template comes first for these."
          onCommit={(text) => onChange(withField(template, 'models', modelsOf(text)), said)}
        />
      </div>
      <FaultsAt path={[...path, 'models']} />
      <TemplateLines
        lines={template.lines}
        path={[...path, 'lines']}
        onChange={(lines) => onChange({ ...template, lines }, said)}
      />
      <div class="row">
        <button type="button" class="plain" onClick={onRemove} aria-label={`Remove this template: ${name}`}>
          Remove this template
        </button>
      </div>
    </EntryFold>
  );
}

function summaryOf(template: ReconTemplate): string {
  const { carClass, lines } = template;
  const what =
    lines.length === 0 ? 'no lines yet' : `${countWords(lines.length, 'line', 'lines')}, ${templateSum(template)}`;
  return [carClass, what].filter(Boolean).join(' · ');
}

function modelsOf(text: string | undefined): string[] | undefined {
  const models = (text ?? '')
    .split(',')
    .map((model) => model.trim())
    .filter(Boolean);
  return models.length === 0 ? undefined : models;
}
