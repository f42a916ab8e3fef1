/** Trying in Excel: the certificate, what would be run to trust it, and the server. */
import { X509Certificate } from "node:crypto";
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { request } from "node:https";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Certificate, certificateIn, removeCertificate } from "../../../src/tools/excel/certificate.ts";
import { serveDist } from "../../../src/tools/excel/serve-dist.ts";
import { inWords, trustCommands } from "../../../src/tools/excel/trust.ts";

const home = mkdtempSync(join(tmpdir(), "excel-test-"));
const folder = join(home, "own");
let made: Certificate;
beforeAll(async () => {
  made = await certificateIn(folder, new Date());
}, 60_000);
afterAll(() => rmSync(home, { recursive: true, force: true }));

describe("the certificate", () => {
  it("is not taken from or put into a folder that others can write, or that is a link", async () => {
    const open = join(home, "open");
    mkdirSync(open);
    chmodSync(open, 0o777);
    symlinkSync(open, join(home, "led"));
    await expect(certificateIn(open, new Date())).rejects.toThrow(
      "must be a folder that only you can write; got one that others can write",
    );
    await expect(certificateIn(join(home, "led"), new Date())).rejects.toThrow("got a file or a link");
    expect(readdirSync(open)).toEqual([]);
  });

  it("is for this computer alone, for a month, and cannot sign others", () => {
    const cert = new X509Certificate(made.cert);
    expect(cert.checkHost("localhost")).toBe("localhost");
    expect(cert.checkHost("example.com")).toBeUndefined();
    expect(cert.ca).toBe(false);
    const days = (Date.parse(cert.validTo) - Date.now()) / 86_400_000;
    expect(days).toBeGreaterThan(27);
    expect(days).toBeLessThanOrEqual(31);
    expect(cert.verify(new X509Certificate(readFileSync(made.authority)).publicKey)).toBe(true);
  });

  it("leaves no key of the authority, and its own readable by its owner only", () => {
    const kept = readdirSync(folder)
      .map((name) => readFileSync(join(folder, name), "utf8"))
      .join("\n");
    expect(kept.match(/BEGIN (?:RSA )?PRIVATE KEY/g)).toHaveLength(1); // the server's own
    if (process.platform !== "win32") expect(statSync(join(folder, "localhost-key.pem")).mode & 0o077).toBe(0);
  });

  it("serves again until it has run out, then another is made", async () => {
    const again = await certificateIn(folder, new Date());
    expect([again.isNew, again.cert]).toEqual([false, made.cert]);
    const later = await certificateIn(join(home, "copy"), new Date());
    expect(later.cert).not.toBe(made.cert);
    expect((await certificateIn(join(home, "copy"), new Date(Date.now() + 40 * 86_400_000))).isNew).toBe(true);
    removeCertificate(join(home, "copy"));
    expect(readdirSync(join(home, "copy"))).toEqual([]);
  }, 60_000);
});

describe("trust", () => {
  it.each(["win32", "darwin"] as const)("%s: for the user alone, and the way back is known", (platform) => {
    const { trust, remove } = trustCommands(platform, "/a b/c.pem", "/me")!;
    expect(inWords(trust)).toContain('"/a b/c.pem"');
    expect(trust.join(" ")).not.toMatch(/sudo|-d\b|System/);
    expect(remove.join(" ")).toMatch(/delstore|remove-trusted-cert/);
  });
  it("nothing is trusted where Excel does not run", () => {
    expect(trustCommands("linux", "x", "y")).toBeUndefined();
  });
});

describe("the server", () => {
  it("serves files of dist over https, and nothing above it", async () => {
    const dist = join(home, "dist");
    mkdirSync(dist);
    writeFileSync(join(dist, "taskpane.html"), "<p>pane</p>");
    writeFileSync(join(home, "secret.txt"), "secret");
    const server = await serveDist(dist, made, 0);
    const asked = (path: string) =>
      new Promise<{ status: number; text: string }>((done, fail) => {
        const ca = readFileSync(made.authority);
        request({ host: "localhost", port: server.port, path, ca, family: 4 }, (response) => {
          let text = "";
          response.on("data", (piece) => (text += piece));
          response.on("end", () => done({ status: response.statusCode!, text }));
        })
          .on("error", fail)
          .end();
      });
    try {
      expect(await asked("/taskpane.html")).toEqual({ status: 200, text: "<p>pane</p>" });
      for (const path of ["/../secret.txt", "/%2e%2e/secret.txt", "/..%2fsecret.txt", "/", "/absent.js"])
        expect((await asked(path)).status).toBe(404);
    } finally {
      await server.close();
    }
  });
});
