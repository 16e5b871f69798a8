import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

/** The workspace's top folder. */
export const ROOT = fileURLToPath(new URL("..", import.meta.url));

/** The package manager, fetched by npx where it is not installed; pinned so that every machine builds alike. */
const PNPM = ["--yes", "pnpm@12.21.0"];

/** Runs a program in the workspace; its output is shown only when it fails, or when asked for. Exits with its code on failure. */
export function run(program, args, { show = true, env = {} } = {}) {
  const result = spawnSync(program, args, {
    cwd: ROOT,
    stdio: show ? "inherit" : "pipe",
    env: { ...process.env, ...env },
    encoding: "utf8",
  });
  if (result.status !== 0) {
    if (!show) process.stderr.write(`${result.stdout ?? ""}${result.stderr ?? ""}`);
    process.stderr.write(`failed: ${program} ${args.join(" ")}\n`);
    process.exit(result.status ?? 1);
  }
  return result;
}

/** Runs a tool that the workspace has installed, by the name of its command. */
export function tool(name, args, options) {
  return run(`${ROOT}node_modules/.bin/${name}`, args, options);
}

/** Installs the workspace's packages once; again only when the lock file has changed since. */
export function setUp() {
  const stamp = `${ROOT}node_modules/.set-up`;
  const lock = readFileSync(`${ROOT}pnpm-lock.yaml`, "utf8");
  if (existsSync(stamp) && readFileSync(stamp, "utf8") === lock) return;
  process.stderr.write("Setting up (once) ...\n");
  run("npx", [...PNPM, "install", "--frozen-lockfile", "--reporter=silent"], { show: false });
  writeFileSync(stamp, lock);
}
