import type { LotState } from '../../../src/folds/lot-state.ts';
import { FieldFrame } from '../../../src/ui/inputs/field.tsx';
import { useBoxText } from '../../../src/ui/inputs/use-box-text.ts';
import type { LotEdit } from '../use-lot-edit.ts';

const LONGEST = 4000;

/** Whatever else the buyer wants to remember. */
export function NotesInput({ lot, edit }: { lot: LotState; edit: LotEdit }) {
  const kept = lot.facts.notes ?? '';
  const { text, setText } = useBoxText(kept);
  return (
    <FieldFrame label="Notes" wide>
      {({ id }) => (
        <textarea
          id={id}
          rows={3}
          maxLength={LONGEST}
          value={text}
          onInput={(event) => setText(event.currentTarget.value)}
          onBlur={() => {
            const trimmed = text.trim();
            if (trimmed !== kept) edit.commit('notes', trimmed === '' ? undefined : trimmed, 'Notes saved.');
          }}
        />
      )}
    </FieldFrame>
  );
}
