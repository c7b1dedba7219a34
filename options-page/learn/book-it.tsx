/** Where the other questions about the past are answered, so that nobody looks for them here. */
export function BookIt() {
  return (
    <p class="quiet small prose no-print">
      What you won and lost by week or venue, and what is tied up, is under <a href="#/books/review">Books › Review</a>.
      Each lot’s result is under <a href="#/results">Results</a>. Bring in what cars sold for under{' '}
      <a href="#/books/sold">Books › Sold cars</a>.
    </p>
  );
}
