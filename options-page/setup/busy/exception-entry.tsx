import type { RushException } from '../../../src/domain/setup/store.ts';
import { useFocusNext } from '../../../src/ui/hooks/use-focus-next.ts';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { removeAt, replaceAt } from '../../../src/ui/tables/list-edit.ts';
import { nextSpan } from './next-span.ts';
import { SpanRow } from './span-row.tsx';

export interface ExceptionEntryProps {
  readonly exception: RushException;
  /** The date in words. */
  readonly title: string;
  readonly path: readonly PropertyKey[];
  readonly onChange: (exception: RushException) => void;
  readonly onRemove: () => void;
}

/** One date and its own hours; with none, the store is closed and nobody is busy. */
export function ExceptionEntry({ exception, title, path, onChange, onRemove }: ExceptionEntryProps) {
  const { hours, note, date } = exception;
  const [root, focusNext] = useFocusNext<HTMLElement>();
  return (
    <section class="panel stack" aria-label={title} data-focus={date} ref={root}>
      <div class="row apart">
        <p class="strong">
          {title} {hours.length === 0 && <span class="tag">closed</span>}
        </p>
        <button type="button" class="plain" aria-label={`Remove ${title}`} onClick={onRemove}>
          Remove
        </button>
      </div>
      <TextInput
        label="Note"
        value={note === '' ? undefined : note}
        longest={80}
        placeholder="Holiday sale"
        onCommit={(next = '') => onChange({ ...exception, note: next })}
      />
      {hours.map((span, index) => (
        <SpanRow
          key={index}
          span={span}
          name={title}
          path={[...path, 'hours', index]}
          focusKey={`row-${index}`}
          onChange={(next) => onChange({ ...exception, hours: replaceAt(hours, index, next) })}
          onRemove={() => {
            focusNext('add');
            onChange({ ...exception, hours: removeAt(hours, index) });
          }}
        />
      ))}
      <p data-focus="add">
        <button
          type="button"
          class="plain"
          aria-label={`Add hours on ${title}`}
          onClick={() => {
            focusNext(`row-${hours.length}`);
            onChange({ ...exception, hours: [...hours, nextSpan(hours)] });
          }}
        >
          Add hours
        </button>
      </p>
    </section>
  );
}
