import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import type { FileHandle, open as realOpen } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeEach, expect, test, vi } from "vitest";
import { appendLines } from "../src/record/append-lines.ts";
import { linesOf } from "../src/record/log-line.ts";

/** Disks that fail in the middle: what arrives is put in the way of the recorder's own writes. */
let onWrite: ((file: FileHandle, bytes: Buffer, attempt: number) => Promise<{ bytesWritten: number }>) | undefined;
let writes = 0;
vi.mock("node:fs/promises", async (original) => {
  const real = await original<typeof import("node:fs/promises")>();
  const open = async (...args: Parameters<typeof realOpen>): Promise<FileHandle> => {
    const file = await real.open(...args);
    const write = file.write.bind(file) as (bytes: Buffer) => Promise<{ bytesWritten: number }>;
    return Object.assign(file, {
      write: (bytes: Buffer) =>
        onWrite ? onWrite({ ...file, write } as unknown as FileHandle, bytes, ++writes) : write(bytes),
    }) as FileHandle;
  };
  return { ...real, open };
});

const folder = mkdtempSync(join(tmpdir(), "trug-faults-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const path = join(folder, "season.log");
const ENTRIES = ["2026-06-01 fed planting=pots", "2026-06-02 rained-out"];
beforeEach(() => {
  rmSync(path, { force: true });
  onWrite = undefined;
  writes = 0;
});

const whole = (): string[] => linesOf(readFileSync(path, "utf8")).flatMap((line) => (line.whole ? [line.text] : []));

test("a write that stops half way is made again, and the half line stays uncounted", async () => {
  onWrite = (file, bytes, attempt) => file.write(attempt === 1 ? bytes.subarray(0, bytes.length - 25) : bytes);
  expect(await appendLines(path, ENTRIES, "season.log")).toMatchObject({ ok: true });
  expect(writes).toBe(2);
  expect(new Set(whole())).toEqual(new Set(ENTRIES));
  expect(linesOf(readFileSync(path, "utf8")).filter((line) => !line.whole)).toHaveLength(1);
});

test("a line that arrives damaged is noticed though the disk says it was written", async () => {
  onWrite = async (file, bytes, attempt) => {
    await file.write(attempt === 1 ? Buffer.from(bytes.toString().replaceAll("2026", "2\u0000\u00006")) : bytes);
    return { bytesWritten: bytes.length };
  };
  expect(await appendLines(path, ENTRIES, "season.log")).toMatchObject({ ok: true });
  expect(writes).toBe(2);
  expect(whole()).toEqual(ENTRIES);
});

test("where it never arrives whole, nothing is acknowledged", async () => {
  writeFileSync(path, "");
  onWrite = (file, bytes) => file.write(bytes.subarray(0, 10));
  const outcome = await appendLines(path, ENTRIES, "season.log");
  expect(outcome).toMatchObject({ ok: false, problems: [{ code: "log-not-writable" }] });
  expect(whole()).toEqual([]);
});

test("a full disk is a problem that says so", async () => {
  onWrite = () => Promise.reject(Object.assign(new Error("full"), { code: "ENOSPC" }));
  expect(await appendLines(path, ENTRIES, "season.log")).toMatchObject({
    ok: false,
    problems: [{ code: "log-not-writable", received: "a disk that is full", path: "season.log" }],
  });
});
