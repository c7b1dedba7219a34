import { useEffect, useState } from 'preact/hooks';
import { type StorageRoom, sayBytes, tightRoomSentence } from '../../src/store/attachments/storage-room.ts';
import { useWorkspace } from '../../src/ui/workspace.ts';

/** How much of the browser's storage the journal and its attachments take, with a warning before it is full. */
export function RoomNote() {
  const { store } = useWorkspace();
  const [room, setRoom] = useState<StorageRoom | null>(null);
  useEffect(() => {
    const look = () => {
      store.room().then(setRoom, () => 'a page that cannot reach its data says so elsewhere');
    };
    look();
    return store.subscribe(look);
  }, [store]);
  if (room === null) return null;
  const warning = tightRoomSentence(room);
  return warning === null ? (
    <p class="quiet small">
      The journal and its files take {sayBytes(room.usedBytes)}; the browser allows {sayBytes(room.quotaBytes)}.
    </p>
  ) : (
    <p class="note warning">{warning}</p>
  );
}
