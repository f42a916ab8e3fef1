/** The engine in a thread of its own, so that a long calculation never freezes the page and can be ended. */

import { FileRefusal } from "../../sheet/package/file-refusal.ts";
import { Refusal } from "../../units/refusal.ts";
import type { Answer, Request } from "./protocol.ts";
import { Session } from "./session.ts";
import type { Trade } from "./trade.ts";

let session: Session | undefined;
/** Loaded beside the engine; a question waits for it. */
const loading: Promise<Trade> = import("./trade.ts").then(({ trade }) => trade);

function answer(request: Request, trade: Trade): Answer {
  if (request.ask === "open") {
    session = new Session(request.bytes, trade, request.edits);
    return {
      said: "opened",
      sheets: session.views(),
      first: session.firstSheet(),
      guide: trade.guide(),
      notes: session.notes(),
      waits: session.waits,
    };
  }
  const open = session!;
  if (request.ask === "edit") {
    const done = open.asDone(request.edits);
    const changes = open.edit(...request.edits);
    return { said: "edited", changes, waits: open.waits, done };
  }
  if (request.ask === "fix") return { said: "edited", ...open.fix(request.place), waits: open.waits };
  if (request.ask === "finish") return { said: "edited", changes: open.finish(), waits: open.waits };
  if (request.ask === "look") return { said: "looked", ...open.look(request.place) };
  return { said: "saved", bytes: open.save() };
}

addEventListener("message", async ({ data }: MessageEvent<Request>) => {
  try {
    postMessage(answer(data, await loading));
  } catch (problem) {
    const known = problem instanceof Refusal || problem instanceof FileRefusal;
    const message = known || problem instanceof Error ? problem.message : String(problem);
    postMessage({ said: "refused", message } satisfies Answer);
  }
});
