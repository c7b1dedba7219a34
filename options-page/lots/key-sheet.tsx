import { useEffect, useRef } from 'preact/hooks';

const KEYS = [
  ['↓ or j', 'next lot'],
  ['↑ or k', 'the lot before'],
  ['Enter', 'open its worksheet'],
  ['/', 'search'],
  ['n', 'add lots'],
  ['?', 'this sheet'],
  ['Esc', 'close this, or take back what was typed'],
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
        <button type="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
    </dialog>
  );
}
