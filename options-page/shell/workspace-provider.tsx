import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { thisZone } from '../../src/browser/this-zone.ts';
import type { Outcome, Refusal } from '../../src/domain/outcome.ts';
import { wholeSetup } from '../../src/domain/setup/starting-setup.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import type { Entry } from '../../src/journal/entry.ts';
import type { EntryId } from '../../src/journal/ids.ts';
import type { StoreChange } from '../../src/store/write/touched.ts';
import { Toast } from '../../src/ui/toast.tsx';
import { type Kept, type Workspace, WorkspaceContext } from '../../src/ui/workspace.ts';
import { plannedBids } from '../../src/views/plan/kept-plan.ts';
import type { FirstLook } from './first-look.ts';

interface WorkspaceProviderProps {
  readonly first: FirstLook;
  /** Told after each change of the journal, so that alerts are planned again. */
  readonly onChanged: () => void;
  readonly children: ComponentChildren;
}

/** Keeps what the screens see in step with the store, whoever wrote to it. */
export function WorkspaceProvider({ first, onChanged, children }: WorkspaceProviderProps) {
  const { store } = first;
  const [lots, setLots] = useState(first.lots);
  const [complete, setComplete] = useState(false);
  const [setupState, setSetupState] = useState(first.setup);
  const [plan, setPlan] = useState(first.plan);
  const [said, setSaid] = useState<{ sentence: string; undo: readonly EntryId[] }>();

  const reading = useRef(Promise.resolve());
  const readAgain = useCallback(
    (change: StoreChange) => {
      // One reading after the other, so that an older answer never overwrites a newer one.
      reading.current = reading.current.then(async () => {
        if (change.setup) setSetupState(await store.setup());
        // Whether the plan still holds hangs on all of them.
        setPlan(await store.plan());
        if (change.lots === 'many') {
          setLots((await store.allLots()).filter((lot) => !lot.dropped));
          setComplete(true);
        } else if (change.lots.length > 0) {
          const changed = await Promise.all(change.lots.map(async (id) => ({ id, lot: await store.lot(id) })));
          setLots((before) => merge(before, changed));
        }
      });
    },
    [store],
  );

  useEffect(() => {
    // The first rows are on the screen before the rest is read: two frames, so that they have really been drawn.
    requestAnimationFrame(() => requestAnimationFrame(() => readAgain({ lots: 'many', setup: false, alerts: false })));
    return store.subscribe((change) => {
      readAgain(change);
      if (change.setup || change.books || change.lots === 'many' || change.lots.length > 0) onChanged();
    });
  }, [store, readAgain, onChanged]);

  const setup = useMemo(() => wholeSetup(setupState, thisZone()), [setupState]);
  const planned = useMemo(() => plannedBids(plan?.plan), [plan]);
  const say = useCallback<Workspace['say']>(
    (sentence, ...undo) => setSaid({ sentence, undo: undo.filter((id) => id !== undefined) }),
    [],
  );
  const closeToast = useCallback(() => setSaid(undefined), []);

  const verbs = useMemo(
    () =>
      ({
        changeLot: async (id, set, clear = [], evidence = {}) =>
          kept(await store.changeLot(id, { set, clear, evidence })),
        dropLot: async (id) => kept(await store.dropLot(id)),
        addLot: async (source, lot) => {
          const added = await store.addLots(source, [lot]);
          if (!added.ok) return added;
          const id = added.value.lots[0];
          const entry = added.value.entries[0];
          if (id === undefined || entry === undefined) throw new Error('a lot was added without an entry');
          return { ok: true, value: { id, entry } };
        },
        saveSetup: async (set) => kept(await store.saveSetup(set)),
        undo: async (entry) => kept(await store.undo(entry)),
      }) satisfies Partial<Workspace>,
    [store],
  );

  const workspace = useMemo<Workspace>(
    () => ({ lots, complete, setup, setupKept: setupState !== null, plan, planned, store, say, ...verbs }),
    [lots, complete, setup, setupState, plan, planned, store, say, verbs],
  );

  const undo = said?.undo ?? [];
  return (
    <WorkspaceContext.Provider value={workspace}>
      {children}
      {said && (
        <Toast
          key={said.sentence + said.undo.join()}
          sentence={said.sentence}
          onClose={closeToast}
          onUndo={
            undo.length === 0
              ? undefined
              : async () => {
                  const result = await store.undo(...undo);
                  if (result.ok) say('Undone.', ...result.value.map(({ id }) => id));
                  else say(result.message);
                }
          }
        />
      )}
    </WorkspaceContext.Provider>
  );
}

/** Of several entries the last is the one to undo; a change that needed none is told as such. */
function kept(written: Outcome<readonly Entry[], Refusal>): Outcome<Kept, Refusal> {
  if (!written.ok) return written;
  const entry = written.value.at(-1);
  return entry === undefined
    ? { ok: false, reason: 'nothing-new', message: 'Nothing changed, so nothing was saved.' }
    : { ok: true, value: { entry: entry.id } };
}

function merge(
  before: readonly LotState[],
  changed: readonly { readonly id: string; readonly lot: LotState | null }[],
): readonly LotState[] {
  const byId = new Map(changed.map(({ id, lot }) => [id, lot]));
  const rest = before.map((lot) => (byId.has(lot.id) ? byId.get(lot.id) : lot));
  const known = new Set(before.map((lot) => lot.id as string));
  const fresh = changed.filter(({ id }) => !known.has(id)).map(({ lot }) => lot);
  return [...rest, ...fresh].filter((lot): lot is LotState => lot !== null && lot !== undefined && !lot.dropped);
}
