/** What the command line answers to the shell. */
export const EXIT = { planned: 0, lateOrUnplanned: 1, badInput: 2, stopped: 3 } as const;

/** The words of a call do not fit; the message says which and why. */
export class UsageError extends Error {}
