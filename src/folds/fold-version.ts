/**
 * Raised with every change to what the folds make of the same entries. The store keeps the number its views were made
 * with, and makes them again from the journal when it differs.
 */
export const FOLD_VERSION = 6;
