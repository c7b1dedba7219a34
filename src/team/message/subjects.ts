import { type DeviceId, deviceIdSchema } from '../../journal/ids.ts';
import { type TeamId, teamIdSchema } from './team-id.ts';

/**
 * Where a device's messages stand on the server: one subject for each device, which its key alone may publish on. They are
 * kept in one stream a team, so that the server gives all of them one order.
 */
export const subjectOf = (team: TeamId, device: DeviceId): string => `headroom.${team}.${device}`;

/** The entries of all devices of a team; neither its roster nor invitations. */
export const everySubject = (team: TeamId): string => `headroom.${team}.*`;

/** Who is in the team, in one order, by its owners. */
export const rosterSubject = (team: TeamId): string => `headroom.${team}.team.roster`;

/** What an invited device says of itself, once, and what it is answered. */
export const joinSubject = (team: TeamId, invitation: string): string => `headroom.${team}.join.${invitation}`;
export const answerSubject = (team: TeamId, invitation: string): string => `headroom.${team}.answer.${invitation}`;

/** The pieces of a file, under a name that says nothing of it to who has no key of the team. */
export const fileSubject = (team: TeamId, name: string): string => `headroom.${team}.file.${name}`;

/** All that the stream of a team keeps. */
export const streamSubjects = (team: TeamId): readonly string[] => [`headroom.${team}.*`, `headroom.${team}.*.*`];

export const streamOf = (team: TeamId): string => `headroom-${team}`;

/** Whose entries stand on a subject; null when it is none of ours. */
export function readSubject(subject: string): { readonly team: TeamId; readonly device: DeviceId } | null {
  const [first, teamText, deviceText, ...more] = subject.split('.');
  const [team, device] = [teamIdSchema.safeParse(teamText), deviceIdSchema.safeParse(deviceText)];
  if (first !== 'headroom' || more.length > 0 || !team.success || !device.success) return null;
  return { team: team.data, device: device.data };
}
