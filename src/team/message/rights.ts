import type { DeviceId } from '../../journal/ids.ts';
import { answerSubject, fileSubject, joinSubject, rosterSubject, streamOf, subjectOf } from './subjects.ts';
import type { TeamId } from './team-id.ts';

/** Where the answers for a device or an invited one come in: a room of its own, so that no other can listen. */
export const inboxOf = (name: string): string => `_INBOX_${name}`;

/** What a key may do on the server, as subjects. */
export interface Rights {
  readonly publish: readonly string[];
  readonly subscribe: readonly string[];
}

/**
 * A device writes on its own subject and those of files, and reads all of the team's. It can't change or delete the stream, nor any message.
 * Reading goes through a consumer, which the server forgets by itself.
 */
export function rightsOf(team: TeamId, device: DeviceId): Rights {
  const stream = streamOf(team);
  return {
    publish: [
      subjectOf(team, device),
      fileSubject(team, '*'),
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

/** An owner's device also writes the roster, answers who was invited, and makes the stream where there is none. */
export function ownerRights(team: TeamId, device: DeviceId): Rights {
  const { publish, subscribe } = rightsOf(team, device);
  return {
    publish: [...publish, rosterSubject(team), answerSubject(team, '*'), `$JS.API.STREAM.CREATE.${streamOf(team)}`],
    subscribe,
  };
}

/** Who is invited can say who it is and look for the answer. What else it could get from the stream is sealed. */
export function guestRights(team: TeamId, invitation: string): Rights {
  return {
    publish: [joinSubject(team, invitation), `$JS.API.STREAM.MSG.GET.${streamOf(team)}`],
    subscribe: [`${inboxOf(invitation)}.>`],
  };
}
