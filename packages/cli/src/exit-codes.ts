/** What the command's exit code says. Scripts rely on these. */
export const EXIT = {
  /** An answer, with or without cautions. */
  answer: 0,
  /** With --strict: the targets could not all be met. */
  notMet: 1,
  /** The input cannot be used. */
  unusable: 2,
  /** A bug. */
  bug: 70,
} as const;
