import { useState } from 'preact/hooks';
import { askToSend } from '../../src/browser/data-consent.ts';
import { loadTeamProgram } from '../../src/browser/team-program.ts';
import type { Outcome } from '../../src/domain/outcome.ts';
import type * as Program from '../../src/team-program/program.ts';

type TeamProgram = typeof Program;
type Act<Value> = (program: TeamProgram) => Outcome<Value> | Promise<Outcome<Value>>;

/** An act that the program for the team does, one at a time, with what went wrong. */
export interface TeamAct {
  readonly busy: boolean;
  readonly fault: string | undefined;
  readonly run: <Value>(act: Act<Value>, then?: (value: Value) => void) => Promise<void>;
}

/** An act that sends something: the browser is asked at once, in the user's click, whether it may. */
export function allowed<Value>(act: Act<Value>): Act<Value> {
  const asked = askToSend();
  return async (program) => {
    const refused = await asked;
    return refused === null ? act(program) : { ok: false, ...refused };
  };
}

export function useTeamAct(): TeamAct {
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<string>();
  return {
    busy,
    fault,
    async run(act, then) {
      setBusy(true);
      setFault(undefined);
      try {
        const done = await act(await loadTeamProgram<TeamProgram>());
        if (done.ok) then?.(done.value);
        else setFault(done.message);
      } catch (error) {
        setFault(error instanceof Error ? error.message : String(error));
      } finally {
        setBusy(false);
      }
    },
  };
}
