import { render } from 'preact-render-to-string';
import { expect, test } from 'vitest';
import { Ledger } from '../../../src/ui/tables/ledger.tsx';

const rows = [
  { fee: 'Buy fee', cents: 27_000 },
  { fee: 'Online fee', cents: 5_000 },
];
const name = { label: 'Fee', heads: true, cell: ({ fee }: { fee: string }) => fee, total: 'All' } as const;
const amount = {
  label: 'Amount',
  number: true,
  cell: ({ cents }: { cents: number }) => cents / 100,
  total: 320,
} as const;

test('one array of columns gives head, cells and totals, each with its column’s classes', () => {
  const html = render(<Ledger rows={rows} rowKey={({ fee }) => fee} columns={[name, { ...amount, class: 'small' }]} />);
  expect(html).toBe(
    '<table class="ledger"><thead><tr><th scope="col">Fee</th><th scope="col" class="number small">Amount</th></tr></thead>' +
      '<tbody><tr><th scope="row">Buy fee</th><td class="number small">270</td></tr>' +
      '<tr><th scope="row">Online fee</th><td class="number small">50</td></tr>' +
      '<tr class="total"><td>All</td><td class="number small">320</td></tr></tbody></table>',
  );
});

test('columns without a label make no head, a quiet head is for screen readers, and no totals make no line', () => {
  const cell = ({ fee }: { fee: string }) => fee;
  expect(render(<Ledger rows={rows} rowKey={({ fee }) => fee} columns={[{ label: '', cell }]} />)).not.toMatch(
    /thead|total/,
  );
  expect(
    render(<Ledger rows={[]} rowKey={() => 0} columns={[{ label: 'Undo', quietHead: true, cell }]} caption="Fees" />),
  ).toContain('<caption>Fees</caption><thead><tr><th scope="col"><span class="visually-hidden">Undo</span></th>');
});
