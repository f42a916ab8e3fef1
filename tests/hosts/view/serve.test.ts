import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { networkInterfaces, tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { copySaver } from "../../../src/tools/view/copy-file.ts";
import { policy, type ServedPage, servePage } from "../../../src/tools/view/serve.ts";

let served: ServedPage;
let saved = 0;
beforeAll(async () => {
  const files = new Map([["", { type: "text/html", content: new TextEncoder().encode("<p>page</p>") }]]);
  const save = () => {
    saved++;
    return { words: "ok", name: "a copy.xlsx", version: "1" };
  };
  served = await servePage(files, { name: "a.xlsx", bytes: () => new Uint8Array([1, 2, 3]), save });
});
afterAll(() => served.close());

const asked = (
  path: string,
  {
    host,
    method = "GET",
    headers = {},
    name = "127.0.0.1",
  }: { host?: string; method?: string; headers?: Record<string, string>; name?: string } = {},
) =>
  new Promise<{ status: number; headers: Record<string, unknown> }>((resolve, reject) => {
    const { port } = new URL(served.url);
    request(
      { host: name, port, path, method, headers: { ...headers, ...(host ? { host } : {}) }, timeout: 2000 },
      (response) => {
        response.resume();
        resolve({ status: response.statusCode!, headers: response.headers });
      },
    )
      .on("error", reject)
      .on("timeout", () => reject(new Error("timeout")))
      .end();
  });
const path = () => new URL(served.url).pathname;

describe("the server of the page", () => {
  it("answers below its token, with a policy that allows nothing from elsewhere", async () => {
    const { status, headers } = await asked(path());
    expect(status).toBe(200);
    expect(headers["content-security-policy"]).toBe(policy());
    expect(policy("p { color: red }")).not.toMatch(/unsafe|https?:|\*/);
  });

  it("serves a week: its page at the top, each bill below its number, a file that is gone with a sentence", async () => {
    const file = (text: string) => ({ type: "text/html", content: new TextEncoder().encode(text) });
    const save = () => ({ words: "", name: "", version: "" });
    const gone = () => {
      throw new Error("b.xlsx is gone");
    };
    const jobs = [
      { name: "a.xlsx", bytes: () => new Uint8Array([7]), save },
      { name: "b.xlsx", bytes: gone, save },
    ];
    const week = await servePage(
      new Map([
        ["", file("bill")],
        ["week.html", file("week")],
      ]),
      { jobs, names: ["a", "b"], now: undefined, shop: undefined },
    );
    const get = async (path: string) => {
      const answer = await fetch(`${week.url}${path}`);
      return `${answer.status} ${await answer.text()}`;
    };
    try {
      expect(await get("")).toBe("200 week");
      expect(await get("0/")).toBe("200 bill");
      expect(await get("0/name")).toBe("200 a.xlsx");
      expect(await get("0/workbook")).toBe("200 \u0007");
      expect(await get("1/workbook")).toBe("422 b.xlsx is gone");
      expect(await get("2/name")).toBe("404 not found");
      expect(await get("name")).toBe("404 not found");
      expect(JSON.parse((await get("week")).slice(4))).toEqual({ names: ["a", "b"], now: null, hasShop: false });
    } finally {
      await week.close();
    }
  });

  it("has a token of at least 128 bits that is another one each time", async () => {
    const save = () => ({ words: "", name: "", version: "" });
    const other = await servePage(new Map(), { name: "", bytes: () => new Uint8Array(), save });
    const tokens = [served, other].map(({ url }) => new URL(url).pathname.replaceAll("/", ""));
    await other.close();
    expect(tokens[0]).not.toBe(tokens[1]);
    expect(tokens[0]!.length).toBeGreaterThanOrEqual(22); // 6 bits a letter
  });

  it.each(["/", "/workbook", "/wrong/workbook", "/save"])("%s without the token is not found", async (wrong) => {
    expect((await asked(wrong)).status).toBe(404);
  });

  it("does not answer another name that points here, nor a page from elsewhere", async () => {
    expect((await asked(path(), { host: "evil.example" })).status).toBe(403);
    const stranger = { headers: { origin: "http://evil.example" }, method: "POST" };
    expect((await asked(`${path()}save`, stranger)).status).toBe(403);
    expect(saved).toBe(0);
  });

  it("listens on the loopback interface alone", async () => {
    const others = Object.values(networkInterfaces()).flatMap((list) =>
      (list ?? []).filter(({ internal, family }) => !internal && family === "IPv4").map(({ address }) => address),
    );
    for (const name of others) await expect(asked(path(), { name })).rejects.toThrow();
  });
});

describe("a saved copy", () => {
  const home = mkdtempSync(join(tmpdir(), "copy-test-"));
  afterAll(() => rmSync(home, { recursive: true, force: true }));
  const bytes = new Uint8Array(readFileSync("sample-workbooks/stage-job.xlsx"));
  const asked = { bytes, of: "", name: "", version: undefined };

  it("lands beside the workbook under a name of its own; later saves go to the same copy", () => {
    const file = join(home, "job.xlsx");
    writeFileSync(file, "the workbook");
    writeFileSync(join(home, "job copy.xlsx"), "somebody's");
    const save = copySaver(file);
    const first = save(asked);
    expect(first.words).toContain("job copy 2.xlsx");
    expect(save({ ...asked, name: first.name, version: first.version }).words).toContain("job copy 2.xlsx");
    expect(readdirSync(home).sort()).toEqual(["job copy 2.xlsx", "job copy.xlsx", "job.xlsx"]);
    expect(readFileSync(file, "utf8")).toBe("the workbook");
  });

  it("never goes over what another page or program has written: it says so and offers a name that is free", () => {
    const file = join(home, "two.xlsx");
    const save = copySaver(file);
    const [one, other] = [save(asked), save(asked)]; // two tabs
    expect([one.name, other.name]).toEqual(["two copy.xlsx", "two copy 2.xlsx"]);
    writeFileSync(join(home, one.name), "changed in Excel");
    const refused = save({ ...asked, name: one.name, version: one.version });
    expect(refused).toMatchObject({ name: "two copy 3.xlsx", version: undefined });
    expect(refused.words).toMatch(/was changed by somebody else .* nothing was written/);
    expect(readFileSync(join(home, one.name), "utf8")).toBe("changed in Excel");
    expect(save({ ...asked, name: refused.name }).version).toBeDefined();
    expect(save({ ...asked, name: "two.xlsx" }).version).toBeUndefined(); // the workbook itself
    expect(readdirSync(home)).not.toContain("two.xlsx");
  });

  it("a workbook that was dropped keeps its name, and leads nowhere else", () => {
    const folder = mkdtempSync(join(home, "in-"));
    const save = copySaver(join(folder, "job.xlsx"));
    expect(save({ ...asked, of: "theirs.xlsx" }).name).toBe("theirs.xlsx");
    expect(save({ ...asked, of: "theirs.xlsx" }).name).toBe("theirs copy.xlsx");
    expect(save({ ...asked, of: "../../up.xlsx" }).name).toBe("up.xlsx");
    expect(save({ ...asked, name: "..\\..\\run.exe" }).name).toBe("run.exe.xlsx");
    expect(readdirSync(folder).sort()).toEqual(["run.exe.xlsx", "theirs copy.xlsx", "theirs.xlsx", "up.xlsx"]);
  });

  it("is not written from bytes that are no workbook", () => {
    const folder = mkdtempSync(join(home, "no-"));
    expect(() => copySaver(join(folder, "x.xlsx"))({ ...asked, bytes: new Uint8Array([1, 2]) })).toThrow();
    expect(readdirSync(folder)).toEqual([]);
  });
});
