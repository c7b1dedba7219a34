import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

export interface FieldFrameProps {
  readonly label: string;
  /** What the figure means or where it comes from, under the input. */
  readonly hint?: ComponentChildren;
  readonly fault?: string | undefined;
  readonly wide?: boolean;
  readonly children: (ids: { id: string; describedBy: string | undefined; invalid: boolean }) => ComponentChildren;
}

/** A labeled input with its hint and its fault, tied together for screen readers. */
export function FieldFrame({ label, hint, fault, wide, children }: FieldFrameProps) {
  const id = useId();
  const hintId = `${id}-hint`;
  const faultId = `${id}-fault`;
  const describedBy = [hint && hintId, fault && faultId].filter(Boolean).join(' ') || undefined;
  return (
    <div class={wide ? 'field wide' : 'field'}>
      <label class="label" for={id}>
        {label}
      </label>
      {children({ id, describedBy, invalid: fault !== undefined })}
      {hint && (
        <span class="quiet small" id={hintId}>
          {hint}
        </span>
      )}
      {fault && (
        <span class="fault" id={faultId} role="alert">
          {fault}
        </span>
      )}
    </div>
  );
}
