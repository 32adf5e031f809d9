/** Tells rows of one draft apart; never leaves the editor. */
export type Handle = number;
