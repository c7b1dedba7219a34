import { useEffect, useLayoutEffect, useReducer, useRef } from 'preact/hooks';
import type { Setup, SetupSection } from '../../src/domain/setup/setup.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { checkSections } from './check-sections.ts';
import { drafted, isUnkept, type SectionDraft, sectionText, settled } from './section-drafts.ts';
import type { SetupEdit } from './setup-edit.ts';

/** Outlives the screen, so that a change waiting to be mended is still there after a look at the lots. */
let drafts: ReadonlyMap<SetupSection, SectionDraft> = new Map();

/** The one place where the Setup screen keeps anything. */
export function useSectionDrafts(): SetupEdit {
  const { setup, saveSetup, say } = useWorkspace();
  const [, redraw] = useReducer((count: number) => count + 1, 0);
  const latest = useRef(setup);
  latest.current = setup;

  const put = (changes: readonly (readonly [SetupSection, SectionDraft | undefined])[]) => {
    const next = new Map(drafts);
    for (const [section, draft] of changes) {
      if (draft === undefined) next.delete(section);
      else next.set(section, draft);
    }
    drafts = next;
    redraw(undefined);
  };

  useLayoutEffect(() => {
    const open = settled(setup, drafts);
    if (open === drafts) return;
    drafts = open;
    redraw(undefined);
  }, [setup]);

  useEffect(() => {
    const ask = (event: BeforeUnloadEvent) => {
      if ([...drafts.values()].some(isUnkept)) event.preventDefault();
    };
    addEventListener('beforeunload', ask);
    return () => removeEventListener('beforeunload', ask);
  }, []);

  const keep = async (set: Partial<Setup>, said: string) => {
    const sections = sectionsOf(set);
    const base = (section: SetupSection) => sectionText(latest.current, section);
    if (sections.every((section) => sectionText(set, section) === base(section))) {
      return put(sections.map((section) => [section, undefined]));
    }
    const saving = sections.map((section): [SetupSection, SectionDraft] => [
      section,
      { value: set[section], state: 'saving', faults: [], base: base(section) },
    ]);
    put(saving);
    const kept = await saveSetup(set);
    say(kept.ok ? said : kept.message, kept.ok ? kept.value.entry : undefined);
    put(
      saving
        // A later change to the same section has its own way to go.
        .filter(([section, draft]) => drafts.get(section) === draft)
        .map(([section, draft]) => {
          if (!kept.ok) return [section, { ...draft, state: 'refused', refusal: kept.message }];
          const arrived = base(section) === sectionText(set, section);
          return [section, arrived ? undefined : { ...draft, state: 'kept', base: base(section) }];
        }),
    );
  };

  const shown = drafted(setup, drafts);
  return {
    setup: shown,
    drafts,
    faults: [...drafts.values()].flatMap((draft) => draft.faults),
    change: (set, said) => {
      const sections = sectionsOf(set);
      if (sections.every((section) => sectionText(set, section) === sectionText(shown, section))) return;
      const checked = checkSections(set);
      if (checked.ok) keep(checked.value, said);
      else {
        put(
          sections.map((section) => [
            section,
            {
              value: set[section],
              state: 'faulty',
              faults: checked.faults.filter((fault) => fault.path[0] === section),
              base: sectionText(latest.current, section),
            },
          ]),
        );
      }
    },
    giveUp: (section) => put([[section, undefined]]),
    tryAgain: (section) => keep({ [section]: drafts.get(section)?.value }, 'Saved.'),
  };
}

// The keys of a partial setup are sections by its type.
const sectionsOf = (set: Partial<Setup>) => Object.keys(set) as SetupSection[];
