import type { Term } from './term.ts';

/** What is owed to whom, and what proves when something was written. */
export const MONEY_TERMS = {
  terms: {
    term: 'Terms',
    meaning: 'How many days after its date a vendor’s bill is due. A due date on the bill itself comes first.',
    from: 'What you enter for the vendor on the Payables screen.',
  },
  'days-past-due': {
    term: 'Days past due',
    meaning: 'How long a bill has been due and is not paid. A bill that is due today or later is current.',
    from: 'The bill’s due date, or its date and the vendor’s terms.',
  },
  'not-set-against': {
    term: 'Not set against a bill',
    meaning: 'Payments and credits that no bill has used yet. They lower what you owe and stand in no column of days.',
    from: 'The payments and credits recorded in the folders.',
  },
  'net-owed': {
    term: 'Net',
    meaning: 'What you owe a vendor: open bills less payments and credits that are not set against one.',
  },
  'time-stamp': {
    term: 'Time stamp',
    meaning: 'The answer of an outside authority that your latest entry was there at a certain time (RFC 3161).',
    from: 'The authority that you send the request to.',
  },
  fingerprint: {
    term: 'Fingerprint',
    meaning:
      'A short code worked out from an entry and all before it. If any of them is changed, the code no longer fits.',
    from: 'SHA-256 over the entry and the fingerprint before it.',
  },
} satisfies Record<string, Term>;
