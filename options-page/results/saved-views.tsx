import { useState } from 'preact/hooks';
import * as z from 'zod/mini';
import { storageKey } from '../../src/ui/demo-mode.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { FIRST_VIEW, type ResultView, resultViewSchema } from '../../src/views/results/result-view.ts';

const KEY = 'headroom.result-views';
const MOST = 30;
const savedSchema = z.array(
  z.strictObject({ name: z.string().check(z.minLength(1), z.maxLength(60)), view: resultViewSchema }),
);
type Saved = z.infer<typeof savedSchema>;

/** Views kept by name, in this browser only: how one likes to look is not part of the journal. */
export function SavedViews({ view, onView }: { view: ResultView; onView: (view: ResultView) => void }) {
  const { say } = useWorkspace();
  const [saved, setSaved] = useState(readSaved);
  const [name, setName] = useState('');
  const chosen = saved.find((one) => JSON.stringify(one.view) === JSON.stringify(view))?.name ?? '';
  const put = (views: Saved, sentence: string) => {
    setSaved(views);
    say(
      writeSaved(views)
        ? sentence
        : 'This view lasts until you close the tab. The browser is not saving anything else.',
    );
  };
  return (
    <>
      {saved.length > 0 && (
        <label>
          <span class="visually-hidden">Saved view</span>
          <select
            value={chosen}
            onChange={(event) =>
              onView(saved.find((one) => one.name === event.currentTarget.value)?.view ?? FIRST_VIEW)
            }
          >
            <option value="">Saved views</option>
            {saved.map((one) => (
              <option key={one.name} value={one.name}>
                {one.name}
              </option>
            ))}
          </select>
        </label>
      )}
      {chosen === '' ? (
        <details>
          <summary class="small">Save this view</summary>
          <form
            class="row"
            onSubmit={(event) => {
              event.preventDefault();
              const trimmed = name.trim().slice(0, 60);
              if (trimmed === '') return say('Name the view first.');
              put(
                [...saved.filter((one) => one.name !== trimmed), { name: trimmed, view }].slice(-MOST),
                'View saved.',
              );
              setName('');
            }}
          >
            <input
              aria-label="Name of the view"
              placeholder="Lost last month"
              value={name}
              onInput={(event) => setName(event.currentTarget.value)}
            />
            <button type="submit">Save</button>
          </form>
        </details>
      ) : (
        <button
          type="button"
          class="plain"
          onClick={() =>
            put(
              saved.filter((one) => one.name !== chosen),
              `View ${chosen} deleted.`,
            )
          }
        >
          Delete this view
        </button>
      )}
    </>
  );
}

function readSaved(): Saved {
  try {
    const saved = savedSchema.safeParse(JSON.parse(localStorage.getItem(storageKey(KEY)) ?? '[]'));
    return saved.success ? saved.data : [];
  } catch {
    // Not JSON, or storage is switched off: then there are none.
    return [];
  }
}

function writeSaved(saved: Saved): boolean {
  try {
    localStorage.setItem(storageKey(KEY), JSON.stringify(saved));
    return true;
  } catch {
    return false;
  }
}
