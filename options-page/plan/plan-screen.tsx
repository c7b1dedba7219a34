import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import { MINUTE } from '../../src/domain/time/units.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { AskBox } from '../../src/ui/ask/ask-box.tsx';
import { useNow } from '../../src/ui/hooks/use-now.ts';
import { useStandingsNow } from '../../src/ui/hooks/use-standings.ts';
import { StillReading } from '../../src/ui/still-reading.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import type { KeptPlan } from '../../src/views/plan/kept-plan.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { NoPurse } from './no-purse.tsx';
import { PlanChanged } from './plan-changed.tsx';
import { PlanFan } from './plan-fan.tsx';
import { PlanFigures, StandingNote } from './plan-figures.tsx';
import { type PlanLine, PlanTable } from './plan-table.tsx';
import { PurseHead } from './purse-head.tsx';
import { usePlanActs } from './use-plan-acts.ts';
import { type KnownPurse, usePurse } from './use-purse.ts';
import './plan.css';

/** Which bids to place so that the purse earns the most, lot by lot, with why. */
export function PlanScreen() {
  const { plan, complete } = useWorkspace();
  const purse = usePurse();
  if (purse === null || !complete) return <StillReading title="Plan" words="Reading your purse…" />;
  if (purse === 'none') return <NoPurse />;
  return (
    <section class="stack loose plan" aria-busy={plan === null}>
      <header class="row apart">
        <h1>Plan</h1>
        <button type="button" class="no-print" onClick={() => print()}>
          Print
        </button>
      </header>
      <PurseHead entry={purse} view={isOf(plan?.plan, purse) ? plan?.plan.purse : undefined} />
      {plan === null ? <p role="status">Making the plan…</p> : <Made kept={plan.plan} holds={plan.holds} />}
      <Caution />
    </section>
  );
}

/** A purse that was changed a moment ago is another than the one that the plan was made from. */
const isOf = (kept: KeptPlan | undefined, purse: KnownPurse): boolean =>
  kept !== undefined && JSON.stringify(kept.purse.entry) === JSON.stringify(purse);

/** Outside the purse's time, or without anything to plan from. */
const OUTSIDE: ReadonlySet<string> = new Set(['no-close', 'after-purse', 'no-max-bid', 'cant-work-out']);

function Made({ kept, holds }: { kept: KeptPlan; holds: boolean }) {
  const { setup } = useWorkspace();
  const now = useNow(MINUTE);
  const standings = useStandingsNow();
  const { act, asked } = usePlanActs();
  const lines = useLines(kept);
  const inPlan = lines.filter(({ row }) => !OUTSIDE.has(row.reason.is));
  const others = lines.filter(({ row }) => OUTSIDE.has(row.reason.is));
  const table = (caption: string, some: readonly PlanLine[]) => (
    <PlanTable caption={caption} lines={some} standings={standings} now={now} onAct={act} />
  );
  const { plan } = kept;
  return (
    <>
      <PlanChanged kept={kept} holds={holds} />
      {plan.faults.map(({ sentence }) => (
        <p key={sentence} class="note warning">
          {sentence}
        </p>
      ))}
      {inPlan.length === 0 ? (
        <p class="note">
          No open lot closes in this purse’s time. <a href="#/add">Add lots</a>, or change the day until which the purse
          is for.
        </p>
      ) : (
        <>
          {asked && (
            <section class="panel" aria-label={asked.name}>
              <p class="strong">{asked.name}</p>
              {asked.question === undefined ? (
                <p role="alert">{asked.why}</p>
              ) : (
                <AskBox question={asked.question} onAct={asked.answer} onLeave={asked.leave} focus />
              )}
            </section>
          )}
          {table(`${countWords(inPlan.length, 'lot', 'lots')} in closing order`, inPlan)}
          <p class="small quiet no-print">
            Keys in a row: P pins it, S skips it, I ignores the plan for it, ↑ and ↓ move. The same key again undoes it.
          </p>
          <StandingNote standing={plan.standing} />
          <PlanFigures kept={kept} />
          <PlanFan start={kept.purse.purse.cash} fan={plan.fan} zone={setup.store.zone} />
        </>
      )}
      {others.length > 0 && (
        <details>
          <summary>{countWords(others.length, 'lot', 'lots')} outside the plan</summary>
          {table('Outside the plan', others)}
        </details>
      )}
    </>
  );
}

/** The rows of the plan with their lots; one that is no longer watched, or has a result by now, is left out. */
function useLines({ plan }: KeptPlan): readonly PlanLine[] {
  const { lots } = useWorkspace();
  return useMemo(() => {
    const byId = new Map<string, LotState>(lots.map((lot) => [lot.id, lot]));
    const sizes = new Map<number, number>();
    for (const { batch } of plan.rows) if (batch !== null) sizes.set(batch, (sizes.get(batch) ?? 0) + 1);
    return plan.rows.flatMap((row) => {
      const lot = byId.get(row.lotId);
      if (lot === undefined || lot.sale?.result !== undefined || row.reason.is === 'closed') return [];
      return [{ lot, row, together: row.batch === null ? 1 : (sizes.get(row.batch) ?? 1) }];
    });
  }, [lots, plan]);
}

function Caution(): ComponentChildren {
  return (
    <p class="small quiet plan-prose">
      An estimate, not advice: you decide and bid. The plan rests on your max bids and on how your closings ended. In
      invented weekends of 100 lots with short cash, and prices as the closings before them said, it earned 13 to 16%
      more than bidding every max, and less in 8 to 15 weekends of 100. Where prices ran 10% higher than learned, it
      earned 1% less. Estimates can be wrong and money can be lost. With two computers, each plans on its own: count the
      purse on one, and note wins on both.
    </p>
  );
}
