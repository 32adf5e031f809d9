// listening: from the samples of a take to notes, and from notes to evidence.

export {};
