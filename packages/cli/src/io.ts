/** Everything the command may touch outside itself: main.ts gives the real one, tests give their own. */
export interface Io {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly cwd: string;
  readonly home: string;
  /** Whether people read along: colour only then. */
  readonly isTerminal: boolean;
  readonly columns: number;
  /** The clock, which only dates of plans and of files need. */
  readonly now: () => Date;
}
