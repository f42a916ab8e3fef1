/**
 * Serves the page on the loopback interface only, below a random token, so that no other page and no other user can read
 * or write the workbook. Nothing may be loaded from elsewhere.
 */
import { createHash, randomBytes } from "node:crypto";
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { gzipSync } from "node:zlib";
import { type Kept, type ToSave, versionOf } from "./copy-file.ts";
import type { PageFile } from "./page-files.ts";

export interface ServedWorkbook {
  readonly name: string;
  /** As it is on disk now. */
  bytes(): Uint8Array;
  /** Keeps the bytes and says where; throws with a sentence where they cannot be kept. */
  save(save: ToSave): Kept;
}

/** Open jobs of one week: the week's page, and below it, by number, the page of each bill. */
export interface ServedWeek {
  readonly jobs: readonly ServedWorkbook[];
  /** What the jobs are called, each otherwise. */
  readonly names: readonly string[];
  /** ISO; undefined: by the clock of whoever looks. */
  readonly now: string | undefined;
  /** Whose tables rule. */
  readonly shop: (() => Uint8Array) | undefined;
}

/** `styles` are what stands in the page itself; no other may. */
export function policy(styles?: string): string {
  const own = styles === undefined ? "" : ` 'sha256-${createHash("sha256").update(styles).digest("base64")}'`;
  return `default-src 'none'; script-src 'self'; worker-src 'self'; style-src 'self'${own}; img-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`;
}

type Say = (status: number, text: string, more?: Readonly<Record<string, string>>) => void;

const MOST_BYTES = 100_000_000;

export interface ServedPage {
  readonly url: string;
  close(): Promise<void>;
}

/** `port` 0 takes any free one. */
export async function servePage(
  files: ReadonlyMap<string, PageFile>,
  served: ServedWorkbook | ServedWeek,
  port = 0,
): Promise<ServedPage> {
  const token = randomBytes(24).toString("base64url");
  const packed = new Map(
    [...files].map(([path, { type, content, styles }]) => {
      const own = { "content-type": type, "content-encoding": "gzip", "content-security-policy": policy(styles) };
      return [path, { own, content: gzipSync(content) }];
    }),
  );
  const server = createServer((request, response) => {
    const own = `127.0.0.1:${(server.address() as AddressInfo).port}`;
    void answer(request, response, own).catch(() => response.destroy());
  });
  const head = {
    "content-security-policy": policy(),
    "cache-control": "no-store",
    "referrer-policy": "no-referrer",
    "x-content-type-options": "nosniff",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
  };

  async function answer(request: IncomingMessage, response: ServerResponse, own: string): Promise<void> {
    const say: Say = (status, text, more = {}) =>
      void response.writeHead(status, { ...head, ...more, "content-type": "text/plain; charset=utf-8" }).end(text);
    // A name that was made to point here, or a page from elsewhere, is not answered.
    const { host, origin } = request.headers;
    if (host !== own || (origin !== undefined && origin !== `http://${own}`)) return say(403, "not from here");
    const { pathname } = new URL(request.url ?? "/", `http://${own}`);
    if (!pathname.startsWith(`/${token}/`)) return say(404, "not found");
    const path = pathname.slice(token.length + 2);
    const [, number, rest = ""] = /^(?:(\d{1,3})\/)?(.*)$/s.exec(path) ?? [];
    const workbook = "jobs" in served ? served.jobs[Number(number)] : number === undefined ? served : undefined;
    if (number !== undefined && !workbook) return say(404, "not found");
    if (workbook && rest === "save" && request.method === "POST") return save(workbook, request, say);
    if (request.method !== "GET") return say(405, "not allowed");
    const onDisk = (read: () => Uint8Array, isVersion = false) => {
      const bytes = readOr(read);
      if (typeof bytes === "string") return say(422, bytes);
      if (isVersion) return say(200, versionOf(bytes));
      const more = { "content-type": "application/octet-stream", "x-version": versionOf(bytes) };
      response.writeHead(200, { ...head, ...more }).end(bytes);
    };
    if (workbook) {
      if (rest === "name") return say(200, workbook.name);
      if (rest === "version" || rest === "workbook") return onDisk(() => workbook.bytes(), rest === "version");
    } else if ("jobs" in served) {
      const { names, now, shop } = served;
      if (rest === "week") return say(200, JSON.stringify({ names, now: now ?? null, hasShop: !!shop }));
      if (rest === "shop" && shop) return onDisk(shop);
    }
    const file = packed.get("jobs" in served && path === "" ? "week.html" : rest);
    if (!file) return say(404, "not found");
    response.writeHead(200, { ...head, ...file.own }).end(file.content);
  }

  async function save(workbook: ServedWorkbook, request: IncomingMessage, say: Say): Promise<void> {
    const pieces: Buffer[] = [];
    let size = 0;
    for await (const piece of request) {
      size += (piece as Buffer).length;
      if (size > MOST_BYTES) return say(413, "the workbook is too large to be saved");
      pieces.push(piece as Buffer);
    }
    const given = (name: string): string => decodeURIComponent(String(request.headers[name] ?? ""));
    try {
      const kept = workbook.save({
        bytes: new Uint8Array(Buffer.concat(pieces)),
        of: given("x-of"),
        name: given("x-name"),
        version: given("x-version") || undefined,
      });
      const named = { "x-name": encodeURIComponent(kept.name) };
      if (kept.version === undefined) say(409, kept.words, named);
      else say(200, kept.words, { ...named, "x-version": kept.version });
    } catch (problem) {
      say(422, messageOf(problem));
    }
  }

  await new Promise<void>((ready, failed) => {
    server.once("error", failed);
    server.listen(port, "127.0.0.1", ready);
  });
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/${token}/`,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

const messageOf = (problem: unknown): string => String((problem as { message?: string }).message ?? problem);

/** A file that is gone, or cannot be read: the sentence says so. */
function readOr(read: () => Uint8Array): Uint8Array | string {
  try {
    return read();
  } catch (problem) {
    return messageOf(problem);
  }
}
