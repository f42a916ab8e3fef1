/** Serves a built folder on the loopback interface, as a plain web server would. */
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, resolve, sep } from "node:path";

const TYPES: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".png": "image/png",
  ".txt": "text/plain; charset=utf-8",
};

export async function served(folder: string): Promise<{ origin: string; close(): Promise<void> }> {
  const server = createServer((request, response) => {
    const path = resolve(folder, `.${new URL(request.url!, "http://x").pathname}`);
    try {
      if (!path.startsWith(folder + sep)) throw new Error("outside");
      const content = readFileSync(path);
      response.writeHead(200, { "content-type": TYPES[extname(path)] ?? "application/octet-stream" }).end(content);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${port}`,
    close: () => new Promise((done) => server.close(() => done())),
  };
}
