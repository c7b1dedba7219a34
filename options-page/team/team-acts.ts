import { useState } from 'preact/hooks';
import { loadTeamProgram } from '../../src/browser/team-program.ts';
import type { Outcome } from '../../src/domain/outcome.ts';
import type * as Program from '../../src/team-program/program.ts';

type TeamProgram = typeof Program;

/** An act that the program for the team does, one at a time, with what went wrong. */
export interface TeamAct {
  readonly busy: boolean;
  readonly fault: string | undefined;
  readonly run: <Value>(
    act: (program: TeamProgram) => Outcome<Value> | Promise<Outcome<Value>>,
    then?: (value: Value) => void,
  ) => Promise<void>;
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
