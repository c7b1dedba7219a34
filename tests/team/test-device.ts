import { type DeviceId, deviceIdSchema } from '../../src/journal/ids.ts';

export const testDevice = (digit: number): DeviceId => deviceIdSchema.parse(`DEV000000${digit}`);
