/** Mark of an error that says a page is not for this person: it reaches the browser, where the words of an error do not. */
export const NOT_ALLOWED = 'not-allowed';
