import { version } from '../../package.json';

/**
 * Which Headroom this is: no other one has the same. It is the manifest's version, written in by the build, because the
 * first rows ask for it before the browser's interface is loaded.
 */
export const build = (): string => version;
