import { useEffect, useState } from 'preact/hooks';
import { sayTime } from '../../src/domain/time/say-time.ts';
import type { TeamPerson } from '../../src/store/connection/kept-team.ts';
import type { TeamDevice, TeamStanding } from '../../src/store/team/team-state.ts';
import { Ledger, type LedgerColumn } from '../../src/ui/tables/ledger.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { roleWords } from './role-words.ts';
import { SureButton } from './sure-button.tsx';
import { useTeamAct } from './team-acts.ts';

/** Who is in the team, with what was last heard of each. */
export function PeoplePart({ team }: { readonly team: TeamStanding }) {
  const { store, setup, say } = useWorkspace();
  const [devices, setDevices] = useState<readonly TeamDevice[]>([]);
  const { busy, fault, run } = useTeamAct();
  useEffect(() => {
    const look = () => store.teamDevices().then(setDevices, (error: unknown) => say(String(error)));
    void look();
    return store.subscribe(look);
  }, [store, say]);
  const { people, role } = team.shown;
  const isOwner = role === 'owner' && team.shown.state === 'in';
  const wrote = new Map(devices.map((one) => [one.device, one]));
  const columns: LedgerColumn<TeamPerson>[] = [
    {
      label: 'Who',
      cell: ({ name, device, isOut }) => (
        <>
          {name}
          {device === team.device && <span class="quiet"> (this computer)</span>}
          {isOut && <span class="quiet"> (put out)</span>}
        </>
      ),
    },
    { label: 'Role', cell: (one) => roleWords(one.role) },
    { label: 'Last heard of', cell: ({ device }) => heardOf(wrote.get(device)) },
    {
      label: 'Put out',
      quietHead: true,
      cell: (one) =>
        isOwner &&
        one.role !== 'owner' &&
        !one.isOut && (
          <SureButton
            label="Put out"
            of={one.name}
            sure={`Put ${one.name} out for good`}
            busy={busy}
            onSure={() =>
              run(
                (program) => program.putOut(one.device),
                () => say(`${one.name} is out of the team.`),
              )
            }
          />
        ),
    },
  ];
  function heardOf(device: TeamDevice | undefined): string {
    return device === undefined ? 'Nothing yet' : sayTime(device.wroteAt, setup.store.zone);
  }
  return (
    <section class="panel stack">
      <h2>Who is in it</h2>
      {people.length === 0 ? (
        <p>Not known yet.</p>
      ) : (
        <Ledger columns={columns} rows={people} rowKey={({ device }) => device} />
      )}
      {fault !== undefined && (
        <p class="note warning" role="alert">
          {fault}
        </p>
      )}
      {isOwner && (
        <p class="quiet small">
          A computer that is put out gets nothing new and can send nothing more, and a new key holds from then on. What
          it has already stays on it.
        </p>
      )}
    </section>
  );
}
