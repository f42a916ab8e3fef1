/** The week in a thread of its own: a search never freezes the board. */
import { FileRefusal } from "../../../sheet/package/file-refusal.ts";
import { missing } from "../../../units/certain.ts";
import { Refusal } from "../../../units/refusal.ts";
import type { WeekAnswer, WeekRequest } from "./protocol.ts";
import { WeekSession } from "./week-session.ts";

let session: WeekSession | undefined;

function answer(request: WeekRequest): WeekAnswer {
  if (request.ask === "open") {
    session = new WeekSession(request.files, request.shop, request.now);
    for (const moved of request.moves) session.move(moved);
    return { said: "week", board: session.board() };
  }
  const open = session ?? missing();
  switch (request.ask) {
    case "search":
      return { said: "week", board: open.search() };
    case "move":
      return { said: "week", board: open.move(request.moved) };
    case "undo":
      return { said: "week", board: open.undo() };
    case "rescues":
      return { said: "rescues", ways: open.rescues(request.job) };
  }
}

addEventListener("message", ({ data }: MessageEvent<WeekRequest>) => {
  try {
    postMessage(answer(data));
  } catch (problem) {
    const known = problem instanceof Refusal || problem instanceof FileRefusal || problem instanceof Error;
    postMessage({ said: "refused", message: known ? problem.message : String(problem) } satisfies WeekAnswer);
  }
});
