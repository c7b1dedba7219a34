import { useEffect, useRef } from 'preact/hooks';

const KEYS = [
  ['↓', 'next lot'],
  ['↑', 'previous lot'],
  ['Home', 'first lot'],
  ['End', 'last lot'],
  ['1 to 9', 'that row of those in sight'],
  ['Enter', 'open its worksheet'],
  ['D', 'do what it says, in the row'],
  ['P', 'say that it is placed, as its button says'],
  ['C', 'choose the lot'],
  ['Shift C', 'choose all that are shown'],
  ['B', 'buttons for what is chosen'],
  ['F', 'filter: then the arrows, or its first letter'],
  ['G', 'group by venue'],
  ['S', 'search'],
  ['A', 'add lots'],
  ['K', 'these keys'],
  ['Esc', 'close this, or undo what you typed'],
] as const;

/** The keys of the list, on a sheet. */
export function KeySheet({ onClose }: { onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} class="panel" aria-labelledby="key-sheet-title" onClose={onClose}>
      <div class="stack">
        <h2 id="key-sheet-title">Keys</h2>
        <table class="ledger">
          <tbody>
            {KEYS.map(([key, does]) => (
              <tr key={key}>
                <th scope="row">
                  <kbd>{key}</kbd>
                </th>
                <td>{does}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p class="small">The letters work while the focus is in the list or its tools.</p>
        <button type="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
    </dialog>
  );
}
