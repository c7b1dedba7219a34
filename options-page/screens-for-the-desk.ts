// One file for what is done at a desk and in no hurry, as for buying.
export { AddScreen } from './add/add-screen.tsx';
export { BooksScreen } from './books/books-screen.tsx';
export { KeepScreen } from './keep/keep-screen.tsx';
export { SetupScreen } from './setup/setup-screen.tsx';
