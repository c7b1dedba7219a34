import type { ImportQuestion, Meant } from '../../src/intake/import-questions.ts';
import { ChoiceInput } from '../../src/ui/inputs/choice-input.tsx';
import { useWorkspace } from '../../src/ui/workspace.ts';
import { countWords } from '../../src/views/words/count-words.ts';
import { newVenue } from '../setup/venues/new-venue.ts';

interface NameQuestionsProps {
  readonly questions: readonly ImportQuestion[];
  readonly meant: Meant;
  readonly onMeant: (meant: Meant) => void;
}

/** More unknown names than these are a column that was taken for the wrong thing. */
const MOST = 12;

/** One question for each name that the setup does not know, whatever the number of its rows. */
export function NameQuestions({ questions, meant, onMeant }: NameQuestionsProps) {
  if (questions.length === 0) return null;
  return (
    <section class="note warning stack" aria-label="Names that are not in Setup">
      <p>
        {countWords(questions.length, 'name is', 'names are')} not in Setup. One answer holds for all rows; without one,
        the name is saved as written
        {questions.some(({ about }) => about === 'title') && ', and a lot with such a title has no max bid'}.
      </p>
      {questions.slice(0, MOST).map((question) => (
        <Question
          key={`${question.about} ${question.name}`}
          question={question}
          onIs={(id) => onMeant(withMeaning(meant, question, id))}
        />
      ))}
      {questions.length > MOST && (
        <p>
          And {(questions.length - MOST).toLocaleString('en-US')} more. So many names are often another column: check
          above what each column holds.
        </p>
      )}
    </section>
  );
}

function Question({ question: { about, text, rows }, onIs }: { question: ImportQuestion; onIs: (id: string) => void }) {
  const { setup, saveSetup, say } = useWorkspace();
  const known = about === 'venue' ? setup.venues : setup.titles;
  const addVenue = async () => {
    const venue = { ...newVenue(setup.store.zone), name: text.slice(0, 80) };
    const saved = await saveSetup({ venues: [...setup.venues, venue] });
    say(
      saved.ok
        ? `Added the venue ${venue.name}. Fill in its fees in Setup: until then its lots have no max bid.`
        : saved.message,
    );
  };
  return (
    <div class="row import-question">
      <p>
        <strong>{text}</strong>, {countWords(rows, 'row', 'rows')}:
      </p>
      {about === 'venue' && (
        <button type="button" onClick={addVenue}>
          Add it as a venue
        </button>
      )}
      <ChoiceInput
        label={about === 'venue' ? `${text} is` : `The title “${text}” is`}
        value={undefined}
        none="Choose"
        choices={known.map(({ id, name }) => ({ value: id, label: name }))}
        onCommit={(id) => id !== undefined && onIs(id)}
      />
    </div>
  );
}

const withMeaning = (meant: Meant, { about, name }: ImportQuestion, id: string): Meant => ({
  ...meant,
  [about]: new Map([...meant[about], [name, id]]),
});
