import type { Command } from "commander";
import type { Caution, Outcome, Problem, QuantityReader, Shelf, UnitHabit, WorkingLine } from "nutrient-core";
import type { Io } from "./io.ts";

/** How an answer is to be shown to people. */
export interface Style {
  readonly habit: UnitHabit;
  readonly width: number;
  readonly colour: boolean;
}

/** An answer ready for both kinds of readers. */
export interface Reply {
  /** What was understood, in SI. */
  readonly inputs: object;
  readonly result: object;
  readonly cautions: readonly Caution[];
  /** The cautions as the screen tells them, where that is shorter than all there is to say. */
  readonly cautionsShown?: readonly Caution[];
  readonly working: readonly WorkingLine[];
  /** The short answer for people, a line each. */
  readonly lines: (style: Style) => readonly string[];
  /** When other than an answer: --strict with targets not met. */
  readonly exitCode?: number;
}

/** What a command may ask of the shell around it. */
export interface Context {
  readonly io: Io;
  readonly strict: boolean;
  /** In whose units the answer speaks. */
  readonly habit: UnitHabit;
  /** A reader for these texts: the plain one when it is enough, for it starts in no time; the expression reader otherwise. */
  readonly quantityReader: (texts: readonly unknown[]) => Promise<QuantityReader>;
  /** The grower's shelf, empty when there is none. */
  readonly shelf: (quantity?: QuantityReader) => Promise<Outcome<Shelf>>;
}

/** The options a command declared, by their names. */
export type Options = Readonly<Record<string, string | boolean | readonly string[] | undefined>>;

/** One command: its words, and what it does with them. */
export interface TrugCommand {
  readonly name: string;
  /** Adds arguments and options; the common ones are added by the shell. */
  readonly configure: (command: Command) => Command;
  /** Two or more real examples, shown in the help and run as tests. */
  readonly examples: readonly string[];
  readonly run: (
    args: readonly string[],
    options: Options,
    context: Context,
  ) => Promise<Reply | { readonly problems: readonly Problem[] }>;
}
