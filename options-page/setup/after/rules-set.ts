import type { AfterSaleRules } from '../../../src/domain/setup/after-sale-rules.ts';

/** How many deadlines a venue's rules name. */
export function rulesSet({ steps, disputes }: AfterSaleRules): number {
  const ofReasons = Object.values(disputes).flatMap((reason) => [reason?.claim, reason?.answer]);
  return [...Object.values(steps), ...ofReasons].filter((rule) => rule !== undefined).length;
}
