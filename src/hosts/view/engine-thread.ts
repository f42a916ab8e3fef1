/** The engine in a thread of its own, so that a long calculation never freezes the page and can be ended. */
import { RECORDS } from "../../cells/catalogue.ts";
import { Refusal } from "../../units/refusal.ts";
import { FileRefusal } from "../headless/package/file-refusal.ts";
import { guideEntry } from "../pane/guide/entry.ts";
import type { Answer, Request } from "./protocol.ts";
import { Session } from "./session.ts";

let session: Session | undefined;

function answer(request: Request): Answer {
  if (request.ask === "open") {
    session = new Session(request.bytes, request.edits);
    return {
      said: "opened",
      sheets: session.views(),
      first: session.firstSheet(),
      guide: RECORDS.map(guideEntry),
      notes: session.notes(),
    };
  }
  const open = session!;
  if (request.ask === "edit") return { said: "edited", changes: open.edit(request.edit) };
  if (request.ask === "look") return { said: "looked", ...open.look(request.place) };
  return { said: "saved", bytes: open.save() };
}

addEventListener("message", ({ data }: MessageEvent<Request>) => {
  try {
    postMessage(answer(data));
  } catch (problem) {
    const known = problem instanceof Refusal || problem instanceof FileRefusal;
    const message = known || problem instanceof Error ? problem.message : String(problem);
    postMessage({ said: "refused", message } satisfies Answer);
  }
});
