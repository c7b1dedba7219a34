// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, expect, test } from 'vitest';
import { Incomplete } from '../../../options-page/lot/incomplete.tsx';
import { type LotFacts, lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { ok } from '../../../src/domain/outcome.ts';
import { type Setup, setupSectionsSchema } from '../../../src/domain/setup/setup.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { worksheetOf } from '../../../src/domain/worksheet/worksheet-of.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import { type Workspace, WorkspaceContext } from '../../../src/ui/workspace.ts';

afterEach(() => act(() => render(null, document.body)));

const FACTS: LotFacts = lotFactsSchema.parse({ venueId: 'yard', retail: { likely: 2_000_000 }, titleId: 'flood' });
const YARD = {
  id: 'yard',
  name: 'Saltgrass, west yard',
  zone: 'America/Phoenix',
  feeScheduleIds: [],
  increments: [{ fromCents: 0, stepCents: 10_000 }],
  transport: { kind: 'flat', cents: 0 },
};

/** The worksheet's list of what is missing, under a setup that follows what is saved. */
function open() {
  const page = {
    setup: setupSectionsSchema.parse({ ...startingSetup(zone('America/Boise')), venues: [YARD] }) as Setup,
    said: [] as string[],
  };
  const saveSetup: Workspace['saveSetup'] = async (set) => {
    page.setup = setupSectionsSchema.parse({ ...page.setup, ...set });
    draw();
    return ok({ entry: '01J00000000000000000000000' as EntryId });
  };
  const draw = () => {
    const context = pricingContext(page.setup);
    const sheet = worksheetOf(FACTS, context);
    render(
      <WorkspaceContext.Provider
        value={{ saveSetup, say: (line) => page.said.push(line) } as Partial<Workspace> as Workspace}
      >
        {sheet.ok ? (
          <p>Max bid {sheet.value.result.maxBid}</p>
        ) : (
          <Incomplete
            facts={FACTS}
            context={context}
            problems={sheet.problems}
            edit={{ commit: () => undefined, commitAll: () => undefined }}
          />
        )}
      </WorkspaceContext.Provider>,
      document.body,
    );
  };
  act(draw);
  return page;
}

const field = (label: RegExp) => {
  const found = [...document.querySelectorAll('label')].find((one) => label.test(one.textContent ?? ''));
  const box = found && document.getElementById(found.htmlFor);
  if (!(box instanceof HTMLInputElement || box instanceof HTMLTextAreaElement)) throw new Error(`no field ${label}`);
  return box;
};
const type = async (label: RegExp, text: string) => {
  const box = field(label);
  await act(async () => {
    box.value = text;
    box.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
  await act(async () => void box.dispatchEvent(new FocusEvent('blur')));
};
const press = async (name: RegExp) => {
  const found = [...document.querySelectorAll('button')].find((one) => name.test(one.textContent ?? ''));
  await act(async () => found?.click());
};

test('what a max bid waits for is asked for on the worksheet, one question each, and the figure comes with the last', async () => {
  const page = open();
  await type(/^Transport from Saltgrass/, '780');
  expect(document.body.textContent).not.toContain('Max bid ');
  await type(/^What a Flood car brings/, '55');
  expect(document.body.textContent).not.toContain('Max bid ');
  await type(/^Buy fees at Saltgrass/, '0-4999 $200\n7000 and up 3%');
  expect(document.body.textContent).toContain('Line 2');
  await type(/^Buy fees at Saltgrass/, '0-4999 $200\n5000 and up 3%');
  await press(/^Save these fees/);
  expect(document.body.textContent).toMatch(/Max bid \d+/);
  expect(page.setup.venues[0]).toMatchObject({ transport: { cents: 78_000 } });
  expect(page.setup.venues[0]?.feeScheduleIds).toEqual([page.setup.feeSchedules[0]?.id]);
  expect(page.setup.titles.find(({ id }) => id === 'flood')).toMatchObject({ keepsPpm: 550_000 });
  expect(page.said).toHaveLength(3);
});

test('one press says that a cost is nothing, or that the starting figure is right', async () => {
  const page = open();
  await press(/charges no buy fee$/);
  await press(/^Delivery is free$/);
  await press(/^80% is right$/);
  expect(document.body.textContent).toMatch(/Max bid \d+/);
  expect(page.setup.venues[0]).toMatchObject({ noBuyFees: true, noTransport: true });
});
