// Style sheets are imported for their effect; the bundler puts them beside the script.
declare module '*.css';
