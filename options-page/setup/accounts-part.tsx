import {
  type AccountKey,
  type Bookkeeping,
  bookkeepingOf,
  STARTING_BOOKKEEPING,
} from '../../src/domain/accounts/accounts.ts';
import { COST_KINDS, type CostKind } from '../../src/domain/accounts/cost-kind.ts';
import { CheckInput } from '../../src/ui/inputs/check-input.tsx';
import { TextInput } from '../../src/ui/inputs/text-input.tsx';
import { FaultsAt } from './faults-at.tsx';
import { PartFrame } from './part-frame.tsx';
import { useSetupEdit } from './setup-edit.ts';
import type { SetupPart } from './setup-parts.ts';

const ACCOUNTS: readonly { readonly key: AccountKey; readonly label: string; readonly hint?: string }[] = [
  { key: 'inventory', label: 'Cars in stock', hint: 'Price, fees, freight and recon until a car sells' },
  { key: 'bank', label: 'Bank' },
  { key: 'payable', label: 'Bills not paid yet' },
  { key: 'accrued', label: 'Won, not billed yet', hint: 'Made at month end, reversed by the bill' },
  { key: 'floor', label: 'Floor plan, principal' },
  { key: 'retail', label: 'Sales to customers and businesses' },
  { key: 'wholesale', label: 'Sales at wholesale' },
  { key: 'costOfSales', label: 'Cost of cars sold' },
  { key: 'undone', label: 'Costs of canceled purchases', hint: 'What is not refunded' },
];

const COSTS: Readonly<Record<CostKind, string>> = {
  hammer: 'Hammer price',
  fee: 'Buy fees',
  transport: 'Freight',
  recon: 'Recon',
  interest: 'Floor-plan interest',
  'floor-fee': 'Lender’s fees',
  'sales-tax': 'Sales tax paid',
  other: 'Other costs',
};

/** What the accounts are called in the journal file, and which costs are part of a car's cost. */
export function AccountsPart({ part }: { part: SetupPart }) {
  const { setup, change } = useSetupEdit();
  const books = bookkeepingOf(setup);
  const commit = (set: Partial<Bookkeeping>, said: string) => change({ books: { ...books, ...set } }, said);
  const rename = (key: AccountKey, name: string | undefined) =>
    commit(
      { accounts: { ...books.accounts, [key]: name ?? STARTING_BOOKKEEPING.accounts[key] } },
      `Account renamed ${name ?? STARTING_BOOKKEEPING.accounts[key]}.`,
    );
  return (
    <PartFrame
      part={part}
      intro="Account names for the plain-text journal export. Separate the parts of a name with colons. Use the names your accountant uses."
      caution="What goes into inventory and what is an expense right away differs between books and tax. Ask your accountant before you change it. A change shows as corrections in the open month."
    >
      <FaultsAt path={['books']} />
      <fieldset class="stack">
        <legend>Accounts</legend>
        <div class="fields">
          {ACCOUNTS.map(({ key, label, hint }) => (
            <TextInput
              key={key}
              label={label}
              hint={hint}
              value={books.accounts[key]}
              longest={80}
              onCommit={(name) => rename(key, name)}
            />
          ))}
        </div>
      </fieldset>
      <fieldset class="stack">
        <legend>Part of a car’s cost</legend>
        <p class="quiet setup-prose">
          A checked cost stays with the car until it sells. An unchecked cost is an expense right away, under its own
          account. Uncheck sales tax where it can be refunded: it then stands under its own account until the refund
          comes.
        </p>
        {COST_KINDS.map((kind) => (
          <div key={kind} class="row">
            <CheckInput
              label={COSTS[kind]}
              value={books.treatment[kind] === 'inventory'}
              onCommit={(part) =>
                commit(
                  { treatment: { ...books.treatment, [kind]: part ? 'inventory' : 'expense' } },
                  `${COSTS[kind]}: ${part ? 'part of the car’s cost' : kind === 'sales-tax' ? 'to be refunded' : 'an expense right away'}.`,
                )
              }
            />
            {books.treatment[kind] === 'expense' && (
              <TextInput
                label={`Account for ${COSTS[kind].toLowerCase()}`}
                value={books.accounts[kind]}
                longest={80}
                onCommit={(name) => rename(kind, name)}
              />
            )}
          </div>
        ))}
      </fieldset>
    </PartFrame>
  );
}
