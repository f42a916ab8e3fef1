/** Serves the built add-in over https on the loopback interface, as Excel wants it. */
import { readFileSync, realpathSync, statSync } from "node:fs";
import { createServer } from "node:https";
import { extname, join, sep } from "node:path";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".png": "image/png",
  ".xml": "application/xml",
  ".txt": "text/plain; charset=utf-8",
};

export async function serveDist(
  folder: string,
  { key, cert }: { readonly key: string; readonly cert: string },
  port: number,
): Promise<{ readonly port: number; close(): Promise<void> }> {
  const root = realpathSync(folder);
  const server = createServer({ key, cert }, (request, response) => {
    try {
      const path = join(root, decodeURIComponent(new URL(request.url ?? "/", "https://localhost").pathname));
      if (!realpathSync(path).startsWith(root + sep) || !statSync(path).isFile()) throw new Error("not a file of dist");
      const head = { "content-type": TYPES[extname(path)] ?? "application/octet-stream", "cache-control": "no-store" };
      response.writeHead(200, head).end(readFileSync(path));
    } catch {
      response.writeHead(404, { "content-type": "text/plain" }).end("not found");
    }
  });
  await new Promise<void>((ready, failed) => {
    server.once("error", failed);
    server.listen(port, "127.0.0.1", ready);
  });
  const address = server.address();
  return {
    port: typeof address === "object" && address ? address.port : port,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}
