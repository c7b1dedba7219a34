import type { Role } from '../../src/team/roster/roster-device.ts';

const WORDS: Readonly<Record<Role, string>> = {
  owner: 'owner',
  manager: 'manager',
  buyer: 'buyer',
  bookkeeper: 'bookkeeper',
};

/** The roles that can be given, in the order in which they are offered. */
export const ROLES: readonly Role[] = ['manager', 'buyer', 'bookkeeper', 'owner'];

/** A role in words; one of a newer Headroom as it is. */
export const roleWords = (role: string): string => WORDS[role as Role] ?? role;
