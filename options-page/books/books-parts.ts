/** The parts of the books, in the order of their links; `:lot` stands for a lot's folder, which the list of folders leads to. */
export const BOOKS_PARTS = [
  { part: 'monday', label: 'Monday list' },
  { part: '', label: 'Folders' },
  { part: 'invoices', label: 'Invoices' },
  { part: 'payables', label: 'Payables' },
  { part: 'bank', label: 'Bank' },
  { part: 'share', label: 'Split a bill' },
  { part: 'sold', label: 'Sold cars' },
  { part: 'month', label: 'Month' },
  { part: 'review', label: 'Review' },
  { part: ':lot', label: 'Folder' },
] as const;
