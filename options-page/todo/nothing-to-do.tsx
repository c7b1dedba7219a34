/** What stands here once something was won, on an invented example. */
export function NothingToDo() {
  return (
    <section class="stack loose">
      <h1>Still to do</h1>
      <p class="setup-prose">
        Once a lot is noted as won, what follows stands here by date: pay, bring it home, look it over, get the title.
        The dates come from what <a href="#/setup/after">Setup</a> says of each venue.
      </p>
      <table class="ledger todo-example">
        <caption class="small quiet">An invented example: won on a Tuesday before Thanksgiving</caption>
        <tbody>
          <tr>
            <td>Fri Nov 27, 5:00 PM</td>
            <td>Pay $12,824: two business days, Thanksgiving not counted</td>
          </tr>
          <tr>
            <td>Tue Dec 8, 5:00 PM</td>
            <td>Last moment to bring up a defect: seven days from delivery</td>
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
