import { Ledger } from '../../src/ui/tables/ledger.tsx';

const EXAMPLE = [
  { due: 'Fri Nov 27, 5:00 PM', what: 'Pay $12,824: two business days, Thanksgiving not counted' },
  { due: 'Tue Dec 8, 5:00 PM', what: 'Deadline to report a defect: seven days from delivery' },
  { due: 'Thu Dec 24, 5:00 PM', what: 'Get the title: thirty days' },
];

/** What stands here once something was won, on an invented example. */
export function NothingToDo() {
  return (
    <section class="stack loose">
      <h1>To do</h1>
      <p class="setup-prose">
        When you mark a lot as won, what to do next is listed here by date: pay, get it delivered, inspect it, get the
        title. The dates come from the deadlines that <a href="#/setup/after">Setup</a> has for each venue.
      </p>
      <Ledger
        class="todo-example"
        caption="A made-up example: won on a Tuesday before Thanksgiving"
        captionClass="small quiet"
        rows={EXAMPLE}
        rowKey={({ due }) => due}
        columns={[
          { label: '', cell: ({ due }) => due },
          { label: '', cell: ({ what }) => what },
        ]}
      />
      <p>
        <a class="button main" href="#/lots">
          To the lots
        </a>
      </p>
    </section>
  );
}
