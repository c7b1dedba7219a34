import { formatMoney } from '../../../src/domain/money/format-money.ts';
import { setupCautions } from '../../../src/domain/setup/setup-cautions.ts';
import { isTransportUnsaid, transportCost } from '../../../src/domain/setup/transport-cost.ts';
import type { Venue } from '../../../src/domain/setup/venue.ts';
import { CheckList } from '../../../src/ui/inputs/check-list.tsx';
import { NumberInput } from '../../../src/ui/inputs/number-input.tsx';
import { TextInput } from '../../../src/ui/inputs/text-input.tsx';
import { ZoneInput } from '../../../src/ui/inputs/zone-input.tsx';
import { withField } from '../../../src/ui/tables/list-edit.ts';
import { EntryFold } from '../entry-fold.tsx';
import { FaultsAt } from '../faults-at.tsx';
import { useSetupEdit } from '../setup-edit.ts';
import { IncrementsTable } from './increments-table.tsx';
import { TransportFields } from './transport-fields.tsx';
import { VenueFees } from './venue-fees.tsx';

export interface VenueEntryProps {
  readonly venue: Venue;
  readonly path: readonly PropertyKey[];
  readonly openAtFirst: boolean;
  readonly onChange: (venue: Venue, said: string) => void;
  readonly onRemove: () => void;
}

export function VenueEntry({ venue, path, openAtFirst, onChange, onRemove }: VenueEntryProps) {
  const { setup } = useSetupEdit();
  const name = venue.name === '' ? 'New venue' : venue.name;
  const cautions = setupCautions(setup).filter((c) => c.section === 'venues' && c.index === path[1]);
  return (
    <EntryFold title={name} summary={summaryOf(venue)} path={path} openAtFirst={openAtFirst} focusKey={venue.id}>
      <div class="fields">
        <div data-focus={`${venue.id}-name`}>
          <TextInput
            label="Name"
            value={venue.name === '' ? undefined : venue.name}
            longest={80}
            required
            placeholder="Saltgrass, west yard"
            onCommit={(next = '') => onChange({ ...venue, name: next }, `Venue renamed ${next}.`)}
          />
          <FaultsAt path={[...path, 'name']} />
        </div>
        <ZoneInput
          label="Time zone of its sales"
          value={venue.zone}
          storeZone={setup.store.zone}
          onCommit={(zone) => onChange({ ...venue, zone }, `${name}: time zone set to ${zone}.`)}
        />
      </div>
      <FaultsAt path={path} exact />
      {cautions.length > 0 && (
        <ul class="note warning plain-list">
          {cautions.map((caution) => (
            <li key={caution.message}>{caution.message}</li>
          ))}
        </ul>
      )}
      <CheckList
        legend="Fees a buyer pays here"
        value={venue.feeScheduleIds}
        choices={setup.feeSchedules.map((schedule) => ({ value: schedule.id, label: schedule.name || 'New schedule' }))}
        empty={<p>No fee schedules yet. Enter the fees of this venue below.</p>}
        onCommit={(feeScheduleIds) => onChange({ ...venue, feeScheduleIds }, `Fees of ${name} saved.`)}
      />
      <VenueFees venue={venue} onChange={onChange} />
      <IncrementsTable
        increments={venue.increments}
        path={[...path, 'increments']}
        onChange={(increments) => onChange({ ...venue, increments }, `Increments of ${name} saved.`)}
      />
      <TransportFields venue={venue} onChange={(next) => onChange(next, `Transport from ${name} saved.`)} />
      <div class="fields">
        <NumberInput
          label="Must be paid within"
          value={venue.payWithinDays}
          least={0}
          most={60}
          unit="days"
          hint="After the sale, by the venue’s rules"
          onCommit={(days) => onChange(withField(venue, 'payWithinDays', days), `Payment deadline of ${name} saved.`)}
        />
      </div>
      <p>
        <button type="button" onClick={onRemove}>
          Remove {name}
        </button>
      </p>
    </EntryFold>
  );
}

function summaryOf(venue: Venue): string {
  const { zone, increments, transport } = venue;
  const first = increments[0];
  const steps =
    first === undefined
      ? ''
      : `, increments of ${formatMoney(first.stepCents)}${increments.length > 1 ? ' and more' : ''}`;
  const home = isTransportUnsaid(venue) ? 'not set' : formatMoney(transportCost(transport));
  return `${zone}${steps}, transport ${home}`;
}
