import { useFaultsAt } from './faults-at.tsx';

/** What is wrong with a row of a table, in a row of its own under it. */
export function CellFaults({ path, columns }: { path: readonly PropertyKey[]; columns: number }) {
  const messages = useFaultsAt(path);
  if (messages.length === 0) return null;
  return (
    <tr class="cell-faults">
      <td colSpan={columns} role="alert">
        {messages.map((message) => (
          <p key={message} class="fault">
            {message}
          </p>
        ))}
      </td>
    </tr>
  );
}
