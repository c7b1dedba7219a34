import * as z from 'zod/mini';
import type { PlanChoice } from './plan-lot.ts';

/** What the user decided about a lot, as the journal keeps it. */
export const planChoiceSchema: z.ZodMiniType<PlanChoice> = z.enum(['pinned', 'skipped', 'plan-ignored']);
