import { useEffect } from 'preact/hooks';
import './toast.css';

export interface ToastProps {
  readonly sentence: string;
  readonly onUndo?: (() => void) | undefined;
  readonly onClose: () => void;
}

const STAYS_MS = 10_000;

/** A sentence at the foot of the page that says what was done; it goes by itself, and never takes the focus. */
export function Toast({ sentence, onUndo, onClose }: ToastProps) {
  useEffect(() => {
    const timer = setTimeout(onClose, STAYS_MS);
    return () => clearTimeout(timer);
  }, [onClose]);
  return (
    <div class="toast no-print" role="status">
      <span>{sentence}</span>
      {onUndo && (
        <button type="button" onClick={onUndo}>
          Undo
        </button>
      )}
      <button type="button" class="plain" onClick={onClose} aria-label="Close this message">
        Close
      </button>
    </div>
  );
}
