import * as z from 'zod/mini';
import {
  CORRECTION_IDS,
  CORRECTION_LABELS,
  type CorrectionId,
  type Corrections,
  correctionsSchema,
} from './corrections.ts';

const { slopes, asking, retailLevel, retailSpread, recon, days, canceled, win, halfLifeDays } = correctionsSchema.shape;

/** Each may be absent (stays as it is) or null (off, or back to what holds without a word). */
export const switchesSchema = z.strictObject({
  slopes: z.nullish(slopes),
  asking: z.nullish(asking),
  retailLevel: z.nullish(retailLevel),
  retailSpread: z.nullish(retailSpread),
  recon: z.nullish(recon),
  days: z.nullish(days),
  canceled: z.nullish(canceled),
  win: z.nullish(win),
  halfLifeDays: z.nullish(halfLifeDays),
});
export type Switches = z.infer<typeof switchesSchema>;

/** The corrections after some were switched. */
export function switched(before: Corrections | undefined, set: Switches): Corrections {
  return correctionsSchema.parse(
    Object.fromEntries(Object.entries({ ...before, ...set }).filter(([, value]) => (value ?? undefined) !== undefined)),
  );
}

/** "Correction: recon switched on. Correction: days to sell switched off." */
export function saySwitches(set: Switches): string {
  const said = CORRECTION_IDS.filter((id) => set[id] !== undefined).map(
    (id: CorrectionId) => `${CORRECTION_LABELS[id]} switched ${set[id] === null ? 'off' : 'on'}`,
  );
  const forgetting =
    set.halfLifeDays === undefined
      ? []
      : [`Older results count for half after ${set.halfLifeDays ?? 'the usual number of'} days`];
  return `${[...said, ...forgetting].join('. ')}.`;
}
