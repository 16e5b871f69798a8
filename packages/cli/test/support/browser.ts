import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import type { Browser } from "playwright-core";

const NAMES = ["chromium", "chromium-browser", "google-chrome", "chrome"];

/** The machine's own browser, where it has one: Debian's chromium, or what TRUG_BROWSER names. */
export function browserPath(): string | undefined {
  const named = process.env["TRUG_BROWSER"];
  if (named !== undefined) return named;
  const folders = (process.env["PATH"] ?? "").split(delimiter);
  return NAMES.flatMap((name) => folders.map((folder) => join(folder, name))).find((path) => existsSync(path));
}

/** Starts the browser without a window and without a network of its own. */
export async function startBrowser(executablePath: string): Promise<Browser> {
  const { chromium } = await import("playwright-core");
  return chromium.launch({
    executablePath,
    args: ["--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-dev-shm-usage"],
  });
}
