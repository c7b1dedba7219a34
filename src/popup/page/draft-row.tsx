import { useRef } from 'preact/hooks';
import type { DraftField, DraftFieldName, FieldValue } from '../../capture/draft/draft-lot.ts';
import { wordsOfDoubt } from '../../domain/close/doubt-words.ts';
import type { CloseTime } from '../../domain/time/close-time.ts';
import { instant } from '../../domain/time/instant.ts';
import type { Zone } from '../../domain/time/zone.ts';
import { examineVin } from '../../domain/vin/examine-vin.ts';
import { readVin } from '../../domain/vin/read-vin.ts';
import { draftValue, FROM_WORDS, originWords, SURE_MEANS } from './draft-words.ts';
import { FieldInput } from './field-input.tsx';
import { waysToClose } from './ways-to-close.ts';

export interface DraftRowProps {
  readonly name: DraftFieldName;
  readonly label: string;
  readonly field: DraftField<FieldValue<DraftFieldName>> | undefined;
  readonly typed: boolean;
  /** It is to be answered before the lot is kept. */
  readonly asked: boolean;
  readonly storeZone: Zone;
  readonly venueZone: Zone | undefined;
  /** The model year the page states, which the VIN is compared with. */
  readonly year: number | undefined;
  readonly thisYear: number;
  readonly onType: (value: FieldValue<DraftFieldName> | undefined) => void;
  readonly onPick: (at: number) => void;
  readonly onPoint: () => void;
}

/** One field of a draft: its value, where it came from and how sure that is; opened, the words themselves and how to put it right. */
export function DraftRow(props: DraftRowProps) {
  const { name, label, field, typed, asked, storeZone, onPick, onType, onPoint } = props;
  const summary = useRef<HTMLElement>(null);
  const first = field?.readings[0];
  const open = field !== undefined && !field.settled;
  /** The row folds once it is answered, and what was pressed with it. */
  const answered = (act: () => void) => {
    act();
    summary.current?.focus();
  };
  const look = first === undefined ? 'missing' : open || asked ? 'open' : typed ? 'typed' : first.sure;
  const say = (value: FieldValue<DraftFieldName>) => draftValue(name, value, storeZone);
  return (
    <details class={`draft-row sure-${look}`} open={asked}>
      <summary ref={summary}>
        <span class="draft-label">{label}</span>
        <span class="draft-value">
          {first === undefined ? <span class="missing">not read</span> : open ? 'Which one?' : say(first.value)}
        </span>
        <span class="draft-origin">
          {first === undefined ? '' : open ? 'you choose' : asked ? 'check it' : typed ? 'typed' : originWords(first)}
        </span>
      </summary>
      <div class="draft-behind stack">
        {first !== undefined && !typed && !open && (
          <p class="small">
            <q class="draft-quote">{first.text}</q>
            <span class="quiet"> {SURE_MEANS[first.sure]}</span>
          </p>
        )}
        <Doubts {...props} value={first?.value} onType={(value) => answered(() => onType(value))} />
        {field !== undefined && field.readings.length > 1 && (
          <div class="stack">
            <p class="small">
              {open ? 'The page says both, equally clearly:' : asked ? 'Which one is it?' : 'The page also says:'}
            </p>
            {field.readings.map((reading, at) => (
              <button
                key={`${at} ${reading.text}`}
                type="button"
                class="draft-choice"
                disabled={at === 0 && !asked}
                onClick={() => answered(() => onPick(at))}
              >
                <span class="strong">{say(reading.value)}</span>
                <span class="small quiet">
                  {FROM_WORDS[reading.from]}: {reading.text}
                </span>
              </button>
            ))}
          </div>
        )}
        <FieldInput
          name={name}
          label={first === undefined ? label : `${label}, corrected`}
          value={open ? undefined : first?.value}
          storeZone={storeZone}
          venueZone={props.venueZone}
          onCommit={props.onType}
        />
        <div>
          <button type="button" onClick={onPoint}>
            Point at it on the page
          </button>
        </div>
      </div>
    </details>
  );
}

interface DoubtsProps extends DraftRowProps {
  readonly value: FieldValue<DraftFieldName> | undefined;
}

/** What speaks against a VIN, and what else a closing time could mean. */
function Doubts({ name, value, year, thisYear, storeZone, onType }: DoubtsProps) {
  if (name === 'vin' && typeof value === 'string') {
    const vin = readVin(value);
    const doubts = vin.ok ? examineVin(vin.value, { year, thisYear }).doubts : [];
    if (doubts.length === 0) return null;
    return <p class="note warning small">{doubts.map(({ message }) => message).join(' ')}</p>;
  }
  if (name !== 'close' || typeof value !== 'object' || value.doubts.length === 0) return null;
  const close: CloseTime = value;
  return (
    <div class="note warning stack small">
      <p>{wordsOfDoubt(close)} Until you choose, each time gets its reminders.</p>
      <div class="row">
        {waysToClose(close, storeZone, instant(Date.now())).map(({ picked, words }) => (
          <button key={words} type="button" onClick={() => onType(picked)}>
            {words}
          </button>
        ))}
      </div>
    </div>
  );
}
