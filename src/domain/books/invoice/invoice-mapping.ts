import * as z from 'zod/mini';

/** What a column of an invoice may hold. The amounts of one row may stand in one column, or each in its own. */
export const INVOICE_ROLES = [
  'vin',
  'lot',
  'date',
  'number',
  'words',
  'amount',
  'hammer',
  'fee',
  'transport',
  'other',
  'credit',
  'payment',
  'total',
] as const;
export const invoiceRoleSchema = z.enum(INVOICE_ROLES);
export type InvoiceRole = z.infer<typeof invoiceRoleSchema>;

/** By heading, as the file writes it: what the column holds, or null when it is left out. */
export const invoiceMappingSchema = z.record(z.string().check(z.maxLength(200)), z.nullable(invoiceRoleSchema));
export type InvoiceMapping = z.infer<typeof invoiceMappingSchema>;
