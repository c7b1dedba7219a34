import { useState } from 'preact/hooks';
import type { Instant } from '../../src/domain/time/instant.ts';
import { sayClock } from '../../src/domain/time/say-time.ts';
import { subjectOfLot } from '../../src/journal/subject.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { rushOf } from '../../src/views/lots/rush-words.ts';
import { dutyNow, lotsForNext } from './duty-now.ts';
import type { NowLot } from './now-lot.ts';

interface DutyLineProps {
  /** The lots of today. */
  readonly lots: readonly NowLot[];
  readonly now: Instant;
}

/** Who is on duty now and who is next by the plan; one press gives the next one what is still to close until then. */
export function DutyLine({ lots, now }: DutyLineProps) {
  const { setup, store, say } = useWorkspace();
  const [busy, setBusy] = useState(false);
  const duty = dutyNow(rushOf(setup), setup.store.zone, now);
  if (duty === null) return null;
  const { current, next } = duty;
  const { zone } = setup.store;
  const handed = next === null ? [] : lotsForNext(lots, next, now);
  const handOver = async () => {
    if (next === null) return;
    setBusy(true);
    try {
      const written = await store.append(
        handed.map(({ state: { id } }) => ({
          subject: subjectOfLot(id),
          happening: { kind: 'handed-over' as const, to: next.who },
        })),
      );
      if (!written.ok) return say(written.message);
      const count = handed.length === 1 ? '1 lot' : `${handed.length} lots`;
      say(`${count} handed over to ${next.who}.`, ...written.value.map(({ id }) => id));
    } finally {
      setBusy(false);
    }
  };
  return (
    <section class="now-duty" aria-label="On duty">
      <p>
        {current === null ? (
          'Busy hours have not begun.'
        ) : (
          <>
            On duty until {sayClock(current.to, zone)}: <span class="strong">{current.who ?? 'nobody'}</span>.
          </>
        )}
        {next !== null && ` From ${sayClock(next.from, zone)}: ${next.who}.`}
      </p>
      {next !== null && handed.length > 0 && (
        <button type="button" disabled={busy} onClick={() => void handOver()}>
          Hand over {handed.length === 1 ? '1 lot' : `${handed.length} lots`} to {next.who}
        </button>
      )}
    </section>
  );
}
