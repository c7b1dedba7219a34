import type { DeviceId } from '../../journal/ids.ts';
import { streamOf, subjectOf } from './subjects.ts';
import type { TeamId } from './team-id.ts';

/** Where a device's answers come in: a room of its own, so that no other device can listen. */
export const inboxOf = (device: DeviceId): string => `_INBOX_${device}`;

/** What the key of a device may do on the server, as subjects. */
export interface Rights {
  readonly publish: readonly string[];
  readonly subscribe: readonly string[];
}

/**
 * A device writes on its own subject and reads all of the team's. It can't change or delete the stream, nor any message.
 * Reading goes through a consumer, which the server forgets by itself.
 */
export function rightsOf(team: TeamId, device: DeviceId): Rights {
  const stream = streamOf(team);
  return {
    publish: [
      subjectOf(team, device),
      `$JS.API.STREAM.INFO.${stream}`,
      `$JS.API.STREAM.MSG.GET.${stream}`,
      `$JS.API.CONSUMER.CREATE.${stream}.>`,
      `$JS.API.CONSUMER.INFO.${stream}.>`,
      `$JS.API.CONSUMER.DELETE.${stream}.>`,
      `$JS.API.CONSUMER.MSG.NEXT.${stream}.>`,
    ],
    subscribe: [`${inboxOf(device)}.>`],
  };
}
