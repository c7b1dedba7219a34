import { type Cents, sumCents } from '../../money/cents.ts';

/** By how many days a bill is past due: common practice, no source. Some age by the day of the bill; these don't. */
export const BUCKETS = ['current', '1-30', '31-60', '61-90', 'over 90'] as const;
export type Bucket = (typeof BUCKETS)[number];
export type Ageing = Readonly<Record<Bucket, Cents>>;

/** @param daysPastDue below zero while it is not due yet; a bill that is due today is current */
export function bucketOf(daysPastDue: number): Bucket {
  if (daysPastDue <= 0) return 'current';
  if (daysPastDue <= 30) return '1-30';
  if (daysPastDue <= 60) return '31-60';
  return daysPastDue <= 90 ? '61-90' : 'over 90';
}

/** What is open in each bucket. */
export function ageingOf(bills: readonly { readonly bucket: Bucket; readonly open: Cents }[]): Ageing {
  const sum = (bucket: Bucket) => sumCents(bills.filter((bill) => bill.bucket === bucket).map(({ open }) => open));
  return {
    current: sum('current'),
    '1-30': sum('1-30'),
    '31-60': sum('31-60'),
    '61-90': sum('61-90'),
    'over 90': sum('over 90'),
  };
}
