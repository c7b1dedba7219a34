// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, expect, test, vi } from 'vitest';
import type { LotAct } from '../../src/acts/act.ts';
import type { Choice, Question } from '../../src/acts/question.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { AskBox } from '../../src/ui/ask/ask-box.tsx';
import { press, type } from './doors.tsx';

afterEach(() => act(() => render(null, document.body)));

const bid: LotAct = { do: 'bid', how: 'proxy', cents: cents(900_000) };
const reason: Choice = { words: 'Save', leads: 'do', act: bid, fill: { what: 'reason', label: 'Why', optional: true } };
const yes: Choice = { words: 'Yes', leads: 'do', act: bid };
const wrong: Choice = {
  words: 'The price is wrong',
  leads: 'do',
  act: { do: 'price', cents: cents(0) },
  fill: { what: 'amount', label: 'Price now' },
};

function ask(choices: readonly Choice[], onAct = vi.fn<(sent: LotAct) => unknown>()) {
  const question: Question = { code: 'price', words: 'Is $9,000 right?', choices };
  act(() => render(<AskBox question={question} onAct={onAct} onLeave={() => undefined} />, document.body));
  return onAct;
}

test('plain Enter gives the likeliest answer, and a field comes with the answer that needs it', async () => {
  const onAct = ask([yes, wrong]);
  expect(document.querySelector('input')).toBeNull();
  expect(document.activeElement?.textContent).toBe('Yes');
  await press('The price is wrong');
  expect(onAct).not.toHaveBeenCalled();
  expect(document.activeElement).toBe(document.querySelector('input'));
  await press('The price is wrong');
  expect(document.body.textContent).toContain('Type the amount first.');
  await type('Price now', '8,700');
  await press('The price is wrong');
  expect(onAct.mock.calls).toEqual([[{ do: 'price', cents: 870_000 }]]);
});

test('a reason that is the likeliest answer is asked for at once', async () => {
  const onAct = ask([reason]);
  expect(document.activeElement).toBe(document.querySelector('input'));
  await type('Why', 'Towbar not counted');
  await press('Save');
  expect(onAct.mock.calls).toEqual([[{ ...bid, why: 'Towbar not counted' }]]);
});

test('what is typed outlives the tick of a clock, and a second press is no second answer', async () => {
  const never = new Promise<void>(() => undefined);
  const onAct = ask(
    [reason],
    vi.fn(() => never),
  );
  await type('Why', 'Tow');
  ask([reason], onAct);
  expect(document.querySelector('input')?.value).toBe('Tow');
  await press('Save');
  await press('Save');
  expect(onAct).toHaveBeenCalledTimes(1);
});
