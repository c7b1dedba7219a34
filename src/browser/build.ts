import { api } from './extension-api.ts';

/** Which Headroom this is: no other one has the same. */
export const build = (): string => api.runtime.getManifest().version;
