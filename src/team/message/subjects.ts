import { type DeviceId, deviceIdSchema } from '../../journal/ids.ts';
import { type TeamId, teamIdSchema } from './team-id.ts';

/**
 * Where a device's messages stand on the server: one subject for each device, which its key alone may publish on. They are
 * kept in one stream a team, so that the server gives all of them one order.
 */
export const subjectOf = (team: TeamId, device: DeviceId): string => `headroom.${team}.${device}`;

/** All messages of a team. */
export const everySubject = (team: TeamId): string => `headroom.${team}.*`;

export const streamOf = (team: TeamId): string => `headroom-${team}`;

/** Whose subject it is; null when it is none of ours. */
export function readSubject(subject: string): { readonly team: TeamId; readonly device: DeviceId } | null {
  const [first, teamText, deviceText, ...more] = subject.split('.');
  const [team, device] = [teamIdSchema.safeParse(teamText), deviceIdSchema.safeParse(deviceText)];
  if (first !== 'headroom' || more.length > 0 || !team.success || !device.success) return null;
  return { team: team.data, device: device.data };
}
