/** What was typed or chosen, by key of the input. A long text stays a file, which only the worker reads. */
export type Given = Readonly<Record<string, string | File>>;

/** Longer texts do not go into a field: a browser takes seconds to lay out a megabyte in one. */
export const longestInField = 50_000;
