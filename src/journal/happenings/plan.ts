import * as z from 'zod/mini';
import { planChoiceSchema } from '../../domain/plan/plan-choice.ts';
import { purseEntrySchema } from '../../domain/setup/purse-entry.ts';
import { aboutLot, aboutSetup } from './row.ts';

/** What the plan is made from beside lots and setup. What it comes to is never kept here: it follows. */
export const PLAN = [
  /** What the user told the plan about a lot; null takes it back. */
  aboutLot(
    'plan-choice',
    { choice: z.nullable(planChoiceSchema) },
    {
      fold: (_, { choice }) => ({ planChoice: choice }),
      undo: 'in history',
      pack: 'everything',
    },
  ),
  /** The purse as the user counted it; null for none, and so no plan. */
  aboutSetup(
    'purse-set',
    { purse: z.nullable(purseEntrySchema) },
    {
      fold(setup, { purse }) {
        const { purse: _, ...rest } = setup ?? {};
        return purse === null ? rest : { ...rest, purse };
      },
      undo: 'where made',
      pack: 'everything',
    },
  ),
] as const;
