import type { TrugCommand } from "../command.ts";

/** The commands by name; each one's code is loaded when it is called. */
export const COMMANDS: Readonly<
  Record<string, { readonly summary: string; readonly load: () => Promise<TrugCommand> }>
> = {
  label: {
    summary: "what does this label or formula contain?",
    load: async () => (await import("./label.ts")).labelCommand,
  },
  dose: {
    summary: "how much of it in this can, or what does this spoonful deliver?",
    load: async () => (await import("./dose.ts")).doseCommand,
  },
  blend: {
    summary: "how much of each product for a ratio or for targets?",
    load: async () => (await import("./blend.ts")).blendCommand,
  },
  bed: {
    summary: "how much on this bed?",
    load: async () => (await import("./bed.ts")).bedCommand,
  },
  lime: {
    summary: "how much lime or sulfur to move the pH?",
    load: async () => (await import("./lime.ts")).limeCommand,
  },
  mix: {
    summary: "how much of each for these beds and pots?",
    load: async () => (await import("./mix.ts")).mixCommand,
  },
  season: {
    summary: "what, when and how much, for the whole season?",
    load: async () => (await import("./season.ts")).seasonCommand,
  },
  check: {
    summary: "are these files usable?",
    load: async () => (await import("./check.ts")).checkCommand,
  },
};
