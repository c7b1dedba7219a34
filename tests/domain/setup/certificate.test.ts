import { expect, test } from 'vitest';
import { type Certificate, certificateFault } from '../../../src/domain/setup/certificate.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';

const day = (text: string) => text as LocalDate;
const VENUE = { id: 'pecan', name: 'Pecan Bend Fleet Sale', state: 'TX' };
const CERTIFICATE: Certificate = {
  ...{ id: 'c', state: 'TX', number: '44-1', from: day('2026-01-01'), until: day('2026-12-31'), venueIds: ['pecan'] },
};
const fault = (date: string, ...certificates: Certificate[]) => certificateFault(VENUE, certificates, day(date));

test('a certificate that the venue has on file is good from its first to its last day', () => {
  expect(fault('2026-01-01', CERTIFICATE)).toBeNull();
  expect(fault('2026-12-31', CERTIFICATE)).toBeNull();
  const { from: _, until: __, ...endless } = CERTIFICATE;
  expect(fault('2031-05-05', endless)).toBeNull();
});

test('one that is missing, has run out, begins later or is not with the venue is said', () => {
  expect(fault('2026-05-05')).toMatch(/^No resale certificate for TX is on file/);
  expect(fault('2026-05-05', { ...CERTIFICATE, state: 'AZ' })).toMatch(/^No resale certificate for TX is on file/);
  expect(fault('2027-01-01', CERTIFICATE)).toMatch(/for TX \(no\. 44-1\) had run out on the day of the purchase/);
  expect(fault('2025-12-31', CERTIFICATE)).toMatch(/was not good yet/);
  expect(fault('2026-05-05', { ...CERTIFICATE, venueIds: ['other'] })).toBe(
    'Pecan Bend Fleet Sale does not have your resale certificate for TX yet (no. 44-1).',
  );
});

test('a newer certificate takes the place of one that ran out', () => {
  const { until: _, ...newer } = { ...CERTIFICATE, id: 'd', number: '44-2', from: day('2027-01-01') };
  expect(fault('2027-01-01', CERTIFICATE, newer)).toBeNull();
});

test('of a venue whose state nobody said nothing is asked', () => {
  expect(certificateFault({ id: 'x', name: 'X' }, [], day('2026-05-05'))).toBeNull();
  expect(certificateFault(undefined, [], day('2026-05-05'))).toBeNull();
});
