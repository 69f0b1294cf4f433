/** What the command line answers to the shell. 70 is the usual status of an internal fault (EX_SOFTWARE of sysexits). */
export const EXIT = { planned: 0, lateOrUnplanned: 1, badInput: 2, stopped: 3, broken: 70 } as const;

/** The words of a call do not fit; the message says which and why. */
export class UsageError extends Error {}
