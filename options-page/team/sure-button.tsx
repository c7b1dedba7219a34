import { useState } from 'preact/hooks';

interface SureButtonProps {
  readonly label: string;
  /** Whom or what it is about, for those who hear the button alone. */
  readonly of?: string;
  /** What the second press says. */
  readonly sure: string;
  readonly busy?: boolean;
  readonly onSure: () => void;
}

/** A button for what can't be undone: the second press does it. */
export function SureButton({ label, of, sure, busy = false, onSure }: SureButtonProps) {
  const [asked, setAsked] = useState(false);
  if (!asked)
    return (
      <button
        type="button"
        disabled={busy}
        aria-label={of === undefined ? undefined : `${label}: ${of}`}
        onClick={() => setAsked(true)}
      >
        {label}
      </button>
    );
  return (
    <span class="row">
      <button
        type="button"
        class="main"
        disabled={busy}
        onClick={() => {
          setAsked(false);
          onSure();
        }}
      >
        {sure}
      </button>
      <button type="button" onClick={() => setAsked(false)}>
        Cancel
      </button>
    </span>
  );
}
