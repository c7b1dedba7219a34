// One file for what is done at a desk and in no hurry, as for buying.
export { AddScreen } from '../add/add-screen.tsx';
export { KeepScreen } from '../backup/keep-screen.tsx';
export { BooksScreen } from '../books/books-screen.tsx';
export { LearnScreen } from '../learn/learn-screen.tsx';
export { SetupScreen } from '../setup/setup-screen.tsx';
export { StartScreen } from '../start/start-screen.tsx';
export { WordsScreen } from '../words/words-screen.tsx';
