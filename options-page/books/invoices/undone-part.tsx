import { sayTime } from '../../../src/domain/time/say-time.ts';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { sayHappening } from '../../../src/views/history/say-happening.ts';
import { useBooks } from '../use-books.ts';

const SHOWN = 12;

/** What was recorded and undone as a whole, with the way to bring it back however long ago that was. */
export function UndonePart() {
  const { undo, say, setup } = useWorkspace();
  const { state } = useBooks();
  if (state.undone.length === 0) return null;
  return (
    <details class="panel no-print">
      <summary>
        <strong>Undone:</strong> {state.undone.length} {state.undone.length === 1 ? 'recording' : 'recordings'}
      </summary>
      <ul class="plain-list stack">
        {state.undone.slice(0, SHOWN).map(({ entry, undoneBy, undoneAt, author, happening }) => (
          <li key={entry}>
            {sayHappening(happening)}
            <span class="small quiet block">
              Undone {sayTime(undoneAt, setup.store.zone)} by {author}{' '}
              <button
                type="button"
                class="plain small"
                aria-label={`Bring back: ${sayHappening(happening)}`}
                onClick={async () => {
                  const back = await undo(undoneBy);
                  say(back.ok ? 'Brought back.' : back.message, back.ok ? back.value.entry : undefined);
                }}
              >
                Bring back
              </button>
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}
