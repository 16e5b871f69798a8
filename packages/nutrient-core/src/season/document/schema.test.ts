import { readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import * as z from "zod/mini";
import { seasonDocument } from "./document.ts";

const FILE = new URL("../../../../../docs/season.schema.json", import.meta.url);

/** The published schema is made from the door itself, so that an editor and the command never disagree. */
const made = (): unknown => ({
  title: "A season",
  description:
    "The season file: what is grown where, what it is fed with, and when. Editors complete it with this schema.",
  ...z.toJSONSchema(seasonDocument),
});

test("docs/season.schema.json is what the door accepts (DOCS_UPDATE=1 writes it anew)", () => {
  if (process.env["DOCS_UPDATE"] === "1") writeFileSync(FILE, `${JSON.stringify(made(), null, 2)}\n`);
  expect(JSON.parse(readFileSync(FILE, "utf8"))).toEqual(made());
});

test("every field says what it is", () => {
  interface Described {
    readonly description?: string;
    readonly const?: string;
    readonly properties?: Readonly<Record<string, Described>>;
    readonly items?: Described;
  }
  const silent = ({ properties = {}, items }: Described, path: string): string[] => [
    ...Object.entries(properties).flatMap(([name, field]) => [
      ...(field.description === undefined && field.const === undefined ? [`${path}${name}`] : []),
      ...silent(field, `${path}${name}.`),
    ]),
    ...(items ? silent(items, path) : []),
  ];
  expect(silent(made() as Described, "")).toEqual([]);
});
