import type { CloseTime } from '../domain/time/close-time.ts';
import type { Instant } from '../domain/time/instant.ts';
import { closeLook } from '../views/lots/close-look.ts';
import { CloseLines } from './close-lines.tsx';
import { useWorkspace } from './workspace.ts';

/** When a lot closes on the store's clock, how long that is from now, and how it stands to the busy hours. */
export function CloseText({ close, now }: { close: CloseTime | undefined; now: Instant }) {
  const { setup } = useWorkspace();
  return <CloseLines look={close && closeLook(close, setup, now)} now={now} />;
}
