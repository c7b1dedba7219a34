import type { LotField } from '../../domain/lot/lot.ts';
import type { DraftFieldName } from './draft-lot.ts';

/**
 * Which fact of a lot a field of a page becomes just as it is read; of two that become the same, the first that was read.
 * What is not here becomes one by the words of the setup, goes into the notes, or is only shown.
 */
export const FACT_FIELDS: readonly (readonly [DraftFieldName, LotField])[] = [
  ['vin', 'vin'],
  ['year', 'year'],
  ['make', 'make'],
  ['model', 'model'],
  ['trim', 'trim'],
  ['miles', 'miles'],
  ['lotNumber', 'lotNumber'],
  ['runNumber', 'lotNumber'],
  ['venueName', 'venueName'],
  ['sale', 'sale'],
  ['seller', 'seller'],
  ['location', 'location'],
  ['close', 'close'],
  ['priceNow', 'priceNow'],
  ['increment', 'increment'],
];
