import { booksOnMonday } from './on-the-demo/books.ts';
import { onOneDemo } from './on-the-demo/in-turn.ts';
import { plan } from './on-the-demo/plan.ts';
import { valueOfALot } from './on-the-demo/value.ts';

// In the order of a week: a lot is judged and changed, bids are planned, the books follow.
onOneDemo({ 'on a worksheet': valueOfALot, 'in the plan': plan, 'in the books': booksOnMonday });
