/** What the program's exit status says; `prove` uses 0 to 2, and `diff` 0 and 1 in the sense of equal and different. */
export const exitCode = {
  /** Proved, equal, or simply done. */
  good: 0,
  /** Not proved (refuted or undecided), or different. */
  bad: 1,
  /** The input or the command line could not be used; nothing was judged. */
  unusable: 2,
  /** The program itself is wrong; the number is that of EX_SOFTWARE in sysexits.h. */
  internal: 70,
  /** Stopped by the user, as shells report it. */
  stopped: 130,
} as const;
