import type { ComponentChildren } from 'preact';
import { FieldFrame } from './field.tsx';
import { type ReadBoxOptions, useReadBox } from './use-read-box.ts';

export interface ReadInputProps<Value> extends ReadBoxOptions<Value> {
  readonly label: string;
  readonly hint?: ComponentChildren;
  readonly before?: string;
  readonly after?: string;
  readonly numeric?: boolean;
  readonly wide?: boolean;
  readonly placeholder?: string;
}

/**
 * A box that is read when it is left or Enter is pressed. What can't be read stays in the box with the reason under it;
 * the value before it stays in force, and Escape brings it back.
 */
export function ReadInput<Value>(props: ReadInputProps<Value>) {
  const { label, hint, before, after, numeric, wide, placeholder, ...options } = props;
  const box = useReadBox(options);

  const boxClass = ['unit-box', before && 'has-before', after && 'has-after'].filter(Boolean).join(' ');
  return (
    <FieldFrame label={label} hint={hint} fault={box.fault} {...(wide ? { wide } : {})}>
      {({ id, describedBy, invalid }) => (
        <span class={boxClass}>
          {before && (
            <span class="unit" aria-hidden="true">
              {before}
            </span>
          )}
          <input
            id={id}
            class={numeric ? 'number' : undefined}
            inputMode={numeric ? 'decimal' : undefined}
            autoComplete="off"
            spellcheck={false}
            value={box.text}
            placeholder={placeholder}
            aria-describedby={describedBy}
            aria-invalid={invalid ? 'true' : undefined}
            onInput={(event) => box.type(event.currentTarget.value)}
            onBlur={() => box.commit()}
            onKeyDown={box.onKeyDown}
          />
          {after && (
            <span class="unit after" aria-hidden="true">
              {after}
            </span>
          )}
        </span>
      )}
    </FieldFrame>
  );
}
