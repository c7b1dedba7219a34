import { useEffect, useState } from 'preact/hooks';
import { lotTitle } from '../../src/domain/lot/car-name.ts';
import type { LotId } from '../../src/domain/lot/lot.ts';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { Clash, RestoreChanges, Said } from '../../src/store/backup/what-changes.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { sayHappening } from '../../src/views/history/say-happening.ts';
import { countWords } from '../../src/views/words/count-words.ts';

/** More than these are counted only: a list that nobody reads to its end says less than a number. */
const MOST = 20;

interface ChangesNoteProps {
  readonly changes: RestoreChanges;
  /** Before it is done, or after. */
  readonly as: 'would' | 'did';
}

/** What a restore changes on the list, in the setup and in the books, and where here and the file say different things. */
export function ChangesNote({ changes, as }: ChangesNoteProps) {
  const { lotsAdded, lotsChanged, setup, booked, undos, clashes } = changes;
  const parts = [
    lotsAdded > 0 && `${countWords(lotsAdded, 'lot', 'lots')} added`,
    lotsChanged.length > 0 && `${countWords(lotsChanged.length, 'lot', 'lots')} changed`,
    setup > 0 && `${countWords(setup, 'change', 'changes')} of the setup`,
    booked > 0 && `${countWords(booked, 'booking', 'bookings')} added`,
    undos > 0 && `${countWords(undos, 'entry', 'entries')} undone`,
  ].filter((part) => part !== false);
  const names = useNames([...lotsChanged.slice(0, MOST), ...clashes.slice(0, MOST).flatMap(({ lot }) => lot ?? [])]);
  return (
    <>
      <p>
        {as === 'would' ? 'What it would change: ' : 'What changed: '}
        {parts.length === 0 ? 'nothing on the list, in the setup or in the books' : parts.join(', ')}.
      </p>
      {lotsChanged.length > 0 && (
        <ul class="plain-list small" aria-label="Lots that change">
          {lotsChanged.slice(0, MOST).map((id) => (
            <li key={id}>
              <a href={`#/history/${id}`}>{names.get(id) ?? 'A lot that is not here yet'}</a>
            </li>
          ))}
          {lotsChanged.length > MOST && <li>and {(lotsChanged.length - MOST).toLocaleString('en-US')} more</li>}
        </ul>
      )}
      {clashes.length > 0 && <Clashes clashes={clashes} names={names} />}
    </>
  );
}

function Clashes({ clashes, names }: { clashes: readonly Clash[]; names: ReadonlyMap<LotId, string> }) {
  const { setup } = useWorkspace();
  const words = ({ at, author, happening }: Said) =>
    `${sayHappening(happening)} (${author}, ${sayTime(at, setup.store.zone)})`;
  return (
    <div class="note warning stack">
      <p>
        {countWords(clashes.length, 'thing was', 'things were')} set both here and in the file, to different values. The
        later one counts; the other stays in the history:
      </p>
      <ul class="plain-list">
        {clashes.slice(0, MOST).map(({ lot, here, there, holds }) => (
          <li key={here.id + there.id + sayHappening(here.happening)}>
            {lot !== null && <strong>{names.get(lot) ?? 'A lot'}: </strong>}
            here {words(here)}; in the file {words(there)}. {holds === 'here' ? 'The one here' : 'The one in the file'}{' '}
            counts.
          </li>
        ))}
        {clashes.length > MOST && <li>and {(clashes.length - MOST).toLocaleString('en-US')} more</li>}
      </ul>
    </div>
  );
}

/** By their ids; those that are not here have none. */
function useNames(ids: readonly LotId[]): ReadonlyMap<LotId, string> {
  const { store, say } = useWorkspace();
  const [names, setNames] = useState<ReadonlyMap<LotId, string>>(new Map());
  const key = ids.join();
  useEffect(() => {
    let current = true;
    const wanted = key === '' ? [] : (key.split(',') as LotId[]);
    Promise.all(wanted.map(async (id) => [id, await store.lot(id)] as const)).then(
      (found) => {
        if (current)
          setNames(new Map(found.flatMap(([id, lot]) => (lot === null ? [] : [[id, lotTitle(lot.facts)] as const]))));
      },
      (error: unknown) => say(String(error)),
    );
    return () => {
      current = false;
    };
  }, [key, store, say]);
  return names;
}
