// @vitest-environment jsdom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, expect, test } from 'vitest';
import { ok, refuse } from '../../../src/domain/outcome.ts';
import { ReadInput } from '../../../src/ui/inputs/read-input.tsx';

const committed: (number | undefined)[] = [];

const show = (value: number | undefined) => act(() => draw(value));

function draw(value: number | undefined): void {
  const read = (text: string) => (/^\d+$/.test(text) ? ok(Number(text)) : refuse('digits', 'Type digits only.'));
  render(
    <ReadInput
      label="Price"
      value={value}
      write={String}
      read={read}
      onCommit={(next) => committed.push(next)}
      required
    />,
    document.body,
  );
}

function box(): HTMLInputElement {
  const input = document.querySelector('input');
  if (input === null) throw new Error('there is no box');
  return input;
}

const type = (text: string) =>
  act(() => {
    box().value = text;
    box().dispatchEvent(new Event('input', { bubbles: true }));
  });
const press = (key: string) =>
  act(() => void box().dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true })));
const leave = () => act(() => void box().dispatchEvent(new Event('blur')));

afterEach(() => {
  act(() => render(null, document.body));
  committed.length = 0;
});

test('a value that comes in while another is typed does not wipe it out, and leaving the box keeps what was typed', () => {
  show(1);
  type('950');
  show(900);
  expect(box().value).toBe('950');
  leave();
  expect(committed).toEqual([950]);
});

test('a value that comes in while nothing is typed is shown, also after one was kept', () => {
  show(1);
  show(900);
  expect(box().value).toBe('900');
  type('950');
  press('Enter');
  show(950);
  show(900);
  expect(box().value).toBe('900');
});

test('what can’t be read stays with its reason whatever comes in, and Escape brings back what is in force', () => {
  show(1);
  type('many');
  press('Enter');
  show(900);
  expect(box().value).toBe('many');
  expect(document.body.textContent).toContain('Type digits only.');
  press('Escape');
  expect(box().value).toBe('900');
  expect(document.body.textContent).not.toContain('Type digits only.');
  expect(committed).toEqual([]);
});

test('a value that comes in is in the box before the next key can be pressed', async () => {
  show(1);
  // Without `act`, which would draw a frame too.
  draw(900);
  await Promise.resolve();
  await Promise.resolve();
  expect(box().value).toBe('900');
});

test('a box that is needed is not emptied', () => {
  show(1);
  type('');
  leave();
  expect(document.body.textContent).toContain('This is required.');
  expect(committed).toEqual([]);
});
