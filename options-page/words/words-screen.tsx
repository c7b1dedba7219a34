import { useLayoutEffect, useRef } from 'preact/hooks';
import { GLOSSARY } from '../../src/views/words/glossary.ts';
import type { Term } from '../../src/views/words/term.ts';
import './words.css';

/** What each term and figure means and where the figure comes from; `term` is the entry that a label led to, or empty. */
export function WordsScreen({ term }: { term: string }) {
  const wanted = useRef<HTMLDivElement>(null);
  // Whoever came from a label finds its entry in sight, and goes on from there by keyboard.
  useLayoutEffect(() => {
    wanted.current?.scrollIntoView({ block: 'center' });
    wanted.current?.focus({ preventScroll: true });
  }, [term]);
  return (
    <article class="words stack loose">
      <h1>Words</h1>
      <p class="quiet prose">What each term and figure means, and where the figure comes from.</p>
      {GLOSSARY.map(({ title, terms }) => (
        <section key={title} class="stack">
          <h2>{title}</h2>
          <dl class="words-list">
            {Object.entries(terms).map(([id, entry]) => (
              <div
                key={id}
                id={`word-${id}`}
                class="words-entry"
                tabIndex={-1}
                ref={id === term ? wanted : null}
                aria-current={id === term ? 'true' : undefined}
              >
                <dt class="strong">{entry.term}</dt>
                <Meaning entry={entry} />
              </div>
            ))}
          </dl>
        </section>
      ))}
    </article>
  );
}

function Meaning({ entry: { meaning, from, change } }: { entry: Term }) {
  return (
    <>
      <dd>{meaning}</dd>
      {from !== undefined && (
        <dd class="quiet">
          <strong>Comes from:</strong> {from}
        </dd>
      )}
      {change !== undefined && (
        <dd class="small no-print">
          Change it in <a href={change.href}>{change.label}</a>.
        </dd>
      )}
    </>
  );
}
