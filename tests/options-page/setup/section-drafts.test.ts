import { describe, expect, test } from 'vitest';
import { checkSections } from '../../../options-page/setup/check-sections.ts';
import { drafted, isUnkept, type SectionDraft, settled } from '../../../options-page/setup/section-drafts.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { SetupSection } from '../../../src/domain/setup/setup.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { canonicalJson } from '../../../src/journal/canonical-json.ts';

const kept = startingSetup(zone('America/Boise'));
const costs = { ...kept.costs, packCents: cents(30_000) };
const draft = (state: SectionDraft['state'], base: unknown): Map<SetupSection, SectionDraft> =>
  new Map([['costs', { value: costs, state, faults: [], base: canonicalJson(base) }]]);

describe('a section that is not saved yet', () => {
  test('stands over the kept one on the screen', () => {
    expect(drafted(kept, draft('faulty', kept.costs)).costs).toEqual(costs);
    expect(drafted(kept, draft('faulty', kept.costs)).rules).toEqual(kept.rules);
  });

  test('leaves once the page sees what was kept', () => {
    const drafts = draft('kept', kept.costs);
    expect(settled(kept, drafts)).toBe(drafts);
    expect(settled({ ...kept, costs }, drafts).size).toBe(0);
  });

  test('leaves when another change overtakes it, so that an undo is seen', () => {
    expect(settled({ ...kept, costs: { ...costs, packCents: cents(1) } }, draft('kept', costs)).size).toBe(0);
  });

  test('stays while it is faulty, refused or on its way, whatever else changes', () => {
    for (const state of ['faulty', 'refused', 'saving'] as const) {
      expect(settled({ ...kept, costs: { ...costs, packCents: cents(1) } }, draft(state, kept.costs)).size).toBe(1);
    }
  });

  test('would be lost with the page only when it is faulty or refused', () => {
    const states = (['faulty', 'refused', 'saving', 'kept'] as const).map((state) =>
      isUnkept(draft(state, kept.costs).get('costs')),
    );
    expect(states).toEqual([true, true, false, false]);
  });
});

describe('checking changed sections', () => {
  test('passes sound ones on, and only those that were given', () => {
    expect(checkSections({ costs })).toEqual({ ok: true, value: { costs } });
  });

  test('says which row of which section is at fault', () => {
    const checked = checkSections({
      titles: [{ ...kept.titles[0], id: 'x', name: '', floorable: true, keepsPpm: 0 }] as never,
    });
    expect(checked).toMatchObject({ ok: false, faults: [{ path: ['titles', 0, 'name'] }] });
  });
});
