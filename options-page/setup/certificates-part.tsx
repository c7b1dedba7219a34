import { ok, refuse } from '../../src/domain/outcome.ts';
import { type Certificate, stateSchema } from '../../src/domain/setup/certificate.ts';
import type { Venue } from '../../src/domain/setup/venue.ts';
import { freshId } from '../../src/ui/fresh-id.ts';
import { useFocusNext } from '../../src/ui/hooks/use-focus-next.ts';
import { CheckInput } from '../../src/ui/inputs/check-input.tsx';
import { DateInput } from '../../src/ui/inputs/date-input.tsx';
import { ReadInput } from '../../src/ui/inputs/read-input.tsx';
import { TextInput } from '../../src/ui/inputs/text-input.tsx';
import { removeAt, replaceAt, withField } from '../../src/ui/tables/list-edit.ts';
import { FaultsAt } from './faults-at.tsx';
import { PartFrame } from './part-frame.tsx';
import { useSetupEdit } from './setup-edit.ts';
import type { SetupPart } from './setup-parts.ts';

function readState(text: string) {
  const state = stateSchema.safeParse(text.trim().toUpperCase());
  return state.success ? ok(state.data) : refuse('not-a-state', 'Use the two letters of the state, such as ID.');
}

/** The state of each venue, and the resale certificates that its sellers have on file. */
export function CertificatesPart({ part }: { part: SetupPart }) {
  const { setup, change } = useSetupEdit();
  const { venues, certificates = [] } = setup;
  const [root, focusNext] = useFocusNext<HTMLDivElement>();
  const add = () => {
    const added: Certificate = {
      id: freshId('certificate'),
      state: venues[0]?.state ?? 'ID',
      number: '',
      venueIds: [],
    };
    focusNext(added.id);
    change({ certificates: [...certificates, added] }, 'Added a certificate.');
  };
  const remove = (index: number) => {
    focusNext(certificates[index + 1]?.id ?? 'add');
    change({ certificates: removeAt(certificates, index) }, 'Removed the certificate.');
  };
  return (
    <PartFrame
      part={part}
      intro="Without a resale certificate on file, a venue may charge sales tax. A folder says so when the certificate for its state is missing, has run out, or is not with that venue."
      caution="Which certificate a state takes, how long it is good and whether tax can be refunded is law and differs by state. No rates are built in. Ask the state’s tax agency or a licensed accountant."
    >
      <div class="stack" ref={root}>
        <fieldset class="stack">
          <legend>Where each venue sells</legend>
          {venues.length === 0 && <p>No venues yet.</p>}
          <div class="fields">
            {venues.map((venue, index) => (
              <ReadInput<string>
                key={venue.id}
                label={`State of ${venue.name}`}
                value={venue.state}
                write={(state) => state}
                read={readState}
                placeholder="ID"
                onCommit={(state) =>
                  change(
                    { venues: replaceAt(venues, index, withField(venue, 'state', state)) },
                    `State of ${venue.name} saved.`,
                  )
                }
              />
            ))}
          </div>
        </fieldset>
        {certificates.length === 0 && <p class="setup-prose">No certificates yet.</p>}
        {certificates.map((certificate, index) => (
          <CertificateFields
            key={certificate.id}
            certificate={certificate}
            path={['certificates', index]}
            venues={venues}
            onChange={(next) => change({ certificates: replaceAt(certificates, index, next) }, 'Certificate saved.')}
            onRemove={() => remove(index)}
          />
        ))}
        <p data-focus="add">
          <button type="button" onClick={add}>
            Add a certificate
          </button>
        </p>
      </div>
    </PartFrame>
  );
}

interface FieldsProps {
  readonly certificate: Certificate;
  readonly path: readonly (string | number)[];
  readonly venues: readonly Venue[];
  readonly onChange: (next: Certificate) => void;
  readonly onRemove: () => void;
}

function CertificateFields({ certificate, path, venues, onChange, onRemove }: FieldsProps) {
  const { id, state, number, from, until, venueIds } = certificate;
  const inState = venues.filter((venue) => venue.state === state || venueIds.includes(venue.id));
  return (
    <fieldset class="panel stack" data-focus={id}>
      <legend>Resale certificate for {state}</legend>
      <FaultsAt path={path} />
      <div class="fields">
        <ReadInput<string>
          label="State"
          value={state}
          write={(text) => text}
          read={readState}
          required
          onCommit={(next) => next !== undefined && onChange({ ...certificate, state: next })}
        />
        <TextInput
          label="Number"
          value={number}
          longest={60}
          onCommit={(next) => onChange({ ...certificate, number: next ?? '' })}
        />
        <DateInput label="Good from" value={from} onCommit={(day) => onChange(withField(certificate, 'from', day))} />
        <DateInput
          label="Good until"
          value={until}
          hint="Blank: it does not end"
          onCommit={(day) => onChange(withField(certificate, 'until', day))}
        />
      </div>
      {inState.length === 0 && <p class="quiet small">No venue in {state}. Enter the state of each venue above.</p>}
      {inState.map((venue) => (
        <CheckInput
          key={venue.id}
          label={`${venue.name} has it on file`}
          value={venueIds.includes(venue.id)}
          onCommit={(on) =>
            onChange({
              ...certificate,
              venueIds: on ? [...venueIds, venue.id] : venueIds.filter((one) => one !== venue.id),
            })
          }
        />
      ))}
      <p>
        <button type="button" class="plain" onClick={onRemove}>
          Remove this certificate
        </button>
      </p>
    </fieldset>
  );
}
