/** What stands here once something was won, on an invented example. */
export function NothingToDo() {
  return (
    <section class="stack loose">
      <h1>To do</h1>
      <p class="setup-prose">
        When you mark a lot as won, what to do next is listed here by date: pay, get it delivered, inspect it, get the
        title. The dates come from the deadlines that <a href="#/setup/after">Setup</a> has for each venue.
      </p>
      <table class="ledger todo-example">
        <caption class="small quiet">A made-up example: won on a Tuesday before Thanksgiving</caption>
        <tbody>
          <tr>
            <td>Fri Nov 27, 5:00 PM</td>
            <td>Pay $12,824: two business days, Thanksgiving not counted</td>
          </tr>
          <tr>
            <td>Tue Dec 8, 5:00 PM</td>
            <td>Deadline to report a defect: seven days from delivery</td>
          </tr>
          <tr>
            <td>Thu Dec 24, 5:00 PM</td>
            <td>Get the title: thirty days</td>
          </tr>
        </tbody>
      </table>
      <p>
        <a class="button main" href="#/lots">
          To the lots
        </a>
      </p>
    </section>
  );
}
