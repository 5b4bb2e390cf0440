/** Begins the line of the console that holds the results of the suite in a browser; apart from the suite, which only an editor can load. */
export const marker = 'tidemark-results: ';
