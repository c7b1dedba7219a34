/** Somebody within a sentence: a browser goes by a role, such as "buyer", until a name is given. */
export const person = (author: string): string => (/^\p{Ll}/u.test(author) ? `the ${author}` : author);

/** The same where a sentence or a button begins. */
export const personFirst = (author: string): string => person(author).replace(/^the /, 'The ');
