import * as z from 'zod/mini';
import { bookkeepingSchema } from '../accounts/accounts.ts';
import { carryingSchema } from '../carrying/carrying-rules.ts';
import { stockRecordSchema } from '../carrying/stock-record.ts';
import { correctionsSchema } from '../correction/corrections.ts';
import { feeScheduleSchema } from '../fees/fee-schedule.ts';
import { estimationSchema } from '../retail/estimation.ts';
import { alertRulesSchema } from './alert-rules.ts';
import { certificateSchema } from './certificate.ts';
import { profitRulesSchema, standingCostsSchema, titleBrandSchema, undoneSchema } from './money-rules.ts';
import { reconTemplateSchema } from './recon-template.ts';
import { sitesSchema } from './site.ts';
import { rushSchema, storeSchema } from './store.ts';
import { vendorSchema } from './vendor.ts';
import { venueSchema } from './venue.ts';

const distinctIds = z.refine<readonly { id: string }[]>((list) => new Set(list.map((x) => x.id)).size === list.length, {
  error: 'two entries have the same id',
});

/** The sections of the setup. Each is replaced whole by a journal entry, so that two devices merge section by section. */
export const setupSectionsSchema = z.strictObject({
  store: storeSchema,
  venues: z.array(venueSchema).check(distinctIds),
  feeSchedules: z.array(feeScheduleSchema).check(distinctIds),
  titles: z.array(titleBrandSchema).check(distinctIds),
  rules: profitRulesSchema,
  costs: standingCostsSchema,
  undone: undoneSchema,
  /** What a class of car usually needs; absent until the dealer makes one. */
  reconTemplates: z.optional(z.array(reconTemplateSchema).check(distinctIds)),
  carrying: carryingSchema,
  /** How long the dealer's own cars took; absent until he enters them. */
  stock: z.optional(stockRecordSchema),
  /** Absent in setups older than it; `DEFAULT_ESTIMATION` then holds. Not a default here: a partial change would bring it back. */
  estimation: z.optional(estimationSchema),
  /** What the dealer's own results correct; absent until he first switches something on. */
  corrections: z.optional(correctionsSchema),
  rush: rushSchema,
  alerts: alertRulesSchema,
  /** What the user has said about sale sites: whose they are, and where on their pages he pointed. */
  sites: z.optional(sitesSchema),
  /** As with `estimation`: absent in setups older than it; `STARTING_BOOKKEEPING` then holds. */
  books: z.optional(bookkeepingSchema),
  /** Haulers, shops and others who send bills, and when they want to be paid. */
  vendors: z.optional(z.array(vendorSchema).check(z.maxLength(500))),
  /** Resale certificates; absent until the dealer enters one. */
  certificates: z.optional(z.array(certificateSchema).check(distinctIds)),
});
export type Setup = z.infer<typeof setupSectionsSchema>;
export type SetupSection = keyof Setup;

/** The file that the Setup screen saves and loads, and that the command-line worksheet reads. */
export const setupFileSchema = z.strictObject({
  $schema: z.optional(z.string()),
  format: z.literal('headroom-setup'),
  version: z.literal(1),
  ...setupSectionsSchema.shape,
});
