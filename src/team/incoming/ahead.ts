import type { DeviceId } from '../../journal/ids.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import type { ChainEnd } from '../../journal/verify-chain.ts';
import type { Here } from './check-entries.ts';
import type { Checked } from './check-message.ts';

/** A message that was checked and is not in the journal yet. */
export interface Waiting {
  readonly place: number;
  readonly checked: Checked;
}

/** The journal as it will be once the messages are taken in that were checked: many are taken in at once. */
export class Ahead implements Here {
  private readonly journal: Here;
  private readonly ends = new Map<DeviceId, Envelope>();
  private readonly entries = new Map<string, Envelope>();
  readonly messages: Waiting[] = [];

  constructor(journal: Here) {
    this.journal = journal;
  }

  add(place: number, checked: Checked): void {
    this.messages.push({ place, checked });
    for (const entry of checked.fresh) this.entries.set(`${entry.device} ${entry.sequence}`, entry);
    const last = checked.fresh.at(-1);
    if (last !== undefined) this.ends.set(checked.device, last);
  }

  get size(): number {
    return this.entries.size;
  }

  async endOf(device: DeviceId): Promise<ChainEnd | null> {
    return this.ends.get(device) ?? this.journal.endOf(device);
  }

  async entryAt(device: DeviceId, sequence: number): Promise<Envelope | null> {
    return this.entries.get(`${device} ${sequence}`) ?? this.journal.entryAt(device, sequence);
  }
}
