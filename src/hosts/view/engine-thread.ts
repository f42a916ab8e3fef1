/** The engine in a thread of its own, so that a long calculation never freezes the page and can be ended. */

import { FileRefusal } from "../../sheet/package/file-refusal.ts";
import { missing } from "../../units/certain.ts";
import { Refusal } from "../../units/refusal.ts";
import type { Edit, EngineAnswer, Request } from "./protocol.ts";
import { Session } from "./session.ts";
import type { Trade } from "./trade.ts";

let session: Session | undefined;
/** Loaded beside the engine; a question waits for it. */
const loading: Promise<Trade> = import("./trade.ts").then(({ trade }) => trade);
/** What begins a bill is loaded when somebody does. */
const startList = () => import("./start-list.ts");

async function answer(request: Request, trade: Trade): Promise<EngineAnswer> {
  if (request.ask === "open") {
    session = new Session(request.bytes, trade, request.edits);
    return { said: "opened", sheets: session.names(), board: session.board(), notes: session.notes() };
  }
  if (request.ask === "list") return { said: "list", ...(await startList()).understood(request) };
  if (request.ask === "start") return { said: "bytes", bytes: (await startList()).startedBytes(request) };
  if (request.ask === "guide") return { said: "guide", guide: trade.guide() };
  const open = session ?? missing();
  const edited = (edits: readonly Edit[]): EngineAnswer => {
    const done = open.asDone(edits);
    const changes = open.edit(...edits);
    return { said: "edited", changes, board: open.board(), done };
  };
  switch (request.ask) {
    case "sheet":
      return { said: "sheet", view: open.view(request.sheet) };
    case "edit":
      return edited(request.edits);
    case "row":
      return edited(open.rowEdits(request.place, request.change));
    case "fix":
      return { said: "edited", ...open.fix(request.row), board: open.board() };
    case "finish": {
      const changes = open.finish();
      return { said: "finished", changes, board: open.board(), job: open.figures() };
    }
    case "look":
      return { said: "looked", ...open.look(request.place) };
    case "line":
      return { said: "line", ...open.line(request.row) };
    case "cuts":
      return { said: "cuts", sheets: open.cuts() };
    case "save":
      return { said: "bytes", bytes: open.save() };
  }
}

/** Questions are answered in turn, one whose code is loaded first as well. */
let turn: Promise<void> = Promise.resolve();
addEventListener("message", ({ data }: MessageEvent<Request>) => {
  turn = turn.then(() => answered(data));
});

async function answered(request: Request): Promise<void> {
  try {
    postMessage(await answer(request, await loading));
  } catch (problem) {
    const known = problem instanceof Refusal || problem instanceof FileRefusal;
    const message = known || problem instanceof Error ? problem.message : String(problem);
    postMessage({ said: "refused", message } satisfies EngineAnswer);
  }
}
