import { useSetupEdit } from './setup-edit.ts';

export interface FaultsAtProps {
  readonly path: readonly PropertyKey[];
  /** Only what is wrong with this very part, not with what is inside it. */
  readonly exact?: boolean;
}

/** What is wrong with a row, beside the row. */
export function FaultsAt({ path, exact }: FaultsAtProps) {
  const messages = useFaultsAt(path, exact);
  return messages.length === 0 ? null : (
    <div class="row-faults" role="alert">
      {messages.map((message) => (
        <p key={message} class="fault">
          {message}
        </p>
      ))}
    </div>
  );
}

/** The same as sentences, for rows of tables, where a fault needs a row of its own. */
export function useFaultsAt(path: readonly PropertyKey[], exact = false): readonly string[] {
  const { faults } = useSetupEdit();
  return faults
    .filter((fault) => path.every((key, i) => fault.path[i] === key) && (!exact || fault.path.length === path.length))
    .map((fault) => fault.message);
}
