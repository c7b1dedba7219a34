import { leadsOf } from '../../../src/domain/alerts/lot-calls.ts';
import { type PlannedCall, planOfLots } from '../../../src/domain/alerts/lot-plan.ts';
import { correctionsIn } from '../../../src/domain/time/clock-correction.ts';
import type { Instant } from '../../../src/domain/time/instant.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { useLotAct } from '../../../src/ui/hooks/use-lot-act.ts';
import { useShownAlerts } from '../../../src/ui/hooks/use-shown-alerts.ts';
import { useStandingsNow } from '../../../src/ui/hooks/use-standings.ts';
import { CheckInput } from '../../../src/ui/inputs/check-input.tsx';
import { ReadInput } from '../../../src/ui/inputs/read-input.tsx';
import { useWorkspace } from '../../../src/ui/workspace.ts';
import { alertLot } from '../../../src/views/lots/alert-lots.ts';
import { RUSH_WORDS, rushOf } from '../../../src/views/lots/rush-words.ts';
import { callState, planWords, stepWords, timeWords } from '../../../src/views/words/call-words.ts';
import { readLeads } from '../../setup/alerts/read-leads.ts';
import { Fold } from '../fold.tsx';

interface CallsPartProps {
  readonly lot: LotState;
  readonly now: Instant;
}

const NOTHING: ReadonlyMap<string, Instant> = new Map();
const writeLeads = (leads: readonly number[]) => leads.join(', ');

/** When its user is called for this lot, what was said already, and a plan of its own where he wants one. */
export function CallsPart({ lot, now }: CallsPartProps) {
  const { setup, say } = useWorkspace();
  const act = useLotAct();
  const shown = useShownAlerts() ?? NOTHING;
  const works = useStandingsNow();
  const alert = alertLot(lot, works, correctionsIn(shown.keys()));
  if (alert === null) return null;
  const { rules, zone, calendar } = { rules: setup.alerts, zone: setup.store.zone, calendar: rushOf(setup) };
  const plan = planOfLots([alert], { rules, zone, calendar }, shown);
  const inOrNear = RUSH_WORDS[calendar.of(alert.close).kind];
  const own = lot.clock?.leadMinutes;
  const usual = leadsOf({ ...alert, ownLeads: undefined }, rules);
  const callAt = (leadMinutes: number[] | null) =>
    void act(lot, { do: 'call-at', leadMinutes }).then((unkept) => unkept?.as === 'refuse' && say(unkept.message));
  return (
    <Fold id="calls" title="Reminders" result={alert.close > now ? planWords(plan, zone, now) : lastWords(plan, now)}>
      {() => (
        <>
          <p>
            {inOrNear !== '' && `This close is ${inOrNear}.`}
            {alert.handedTo !== undefined && ` ${alert.handedTo} has this lot; the one reminder carries that name.`}
            {alert.done && ' You turned off reminders for this close.'}
          </p>
          {plan.length > 0 && (
            <ul class="calls-plan">
              {plan.map((call) => (
                <li key={call.key}>
                  <span class="strong">{timeWords(call.dueAt, zone, now)}</span> {stepWords(call.step)}
                  <span class="quiet">, {callState(call, now)}</span>
                </li>
              ))}
            </ul>
          )}
          <div class="fields">
            <ReadInput<number[]>
              label="Remind me, minutes before"
              value={own === undefined ? undefined : [...own]}
              write={writeLeads}
              read={readLeads}
              hint={`Blank: as in Setup (${usual.length === 0 ? 'none' : writeLeads(usual)})`}
              onCommit={(leads) => callAt(leads ?? null)}
            />
            <CheckInput
              label="No reminders before this close"
              value={own?.length === 0}
              onCommit={(none) => callAt(none ? [] : null)}
            />
          </div>
        </>
      )}
    </Fold>
  );
}

function lastWords(plan: readonly PlannedCall[], now: Instant): string {
  const said = plan.filter(({ saidAt }) => saidAt !== undefined).length;
  if (plan.length === 0) return 'No more reminders for this lot.';
  return `It has closed. ${said} of ${plan.filter(({ dueAt }) => dueAt <= now).length} reminders were shown.`;
}
