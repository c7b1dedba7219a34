import { useState } from 'preact/hooks';
import type { ReconTemplate } from '../../../src/domain/setup/recon-template.ts';
import { freshId } from '../../../src/ui/fresh-id.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { PartFrame } from '../part-frame.tsx';
import { useSetupEdit } from '../setup-edit.ts';
import type { SetupPart } from '../setup-parts.ts';
import { TemplateEntry } from './template-entry.tsx';

/** Recon that a class of car usually needs, to be added to a lot or to many with one press. */
export function ReconPart({ part }: { part: SetupPart }) {
  const { setup, change } = useSetupEdit();
  const { reconTemplates: templates = [] } = setup;
  const [added, setAdded] = useState<string>();
  const [root, focusNext] = useFocusNext<HTMLDivElement>();
  const add = () => {
    const template: ReconTemplate = { id: freshId('recon'), name: '', lines: [] };
    setAdded(template.id);
    focusNext(`${template.id}-name`);
    change({ reconTemplates: [...templates, template] }, 'Added a template.');
  };
  const remove = (index: number, { name }: ReconTemplate) => {
    focusNext(templates[index + 1]?.id ?? templates[index - 1]?.id ?? 'add');
    change(
      { reconTemplates: removeAt(templates, index) },
      `Removed the template ${name}. Lots keep the lines that it gave them.`,
    );
  };
  return (
    <PartFrame
      part={part}
      intro="One template for each class of car. Add it to a lot on its worksheet, or to many lots at once in the list. The lot gets its own copy: change it there as the condition report says."
    >
      <div class="stack" ref={root}>
        {templates.length === 0 && (
          <p class="setup-prose">
            No templates yet. A made-up example: <strong>Cargo van, over 80,000 miles</strong>: tires $620, detail $180,
            and front brakes $340, needed on half of them.
          </p>
        )}
        {templates.map((template, index) => (
          <TemplateEntry
            key={template.id}
            template={template}
            path={['reconTemplates', index]}
            openAtFirst={templates.length === 1 || template.id === added}
            onChange={(next, said) => change({ reconTemplates: replaceAt(templates, index, next) }, said)}
            onRemove={() => remove(index, template)}
          />
        ))}
        <p data-focus="add">
          <button type="button" onClick={add}>
            Add a template
          </button>
        </p>
      </div>
    </PartFrame>
  );
}
