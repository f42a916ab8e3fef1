/** Entry of the worker: the whole catalogue, for the calls that may take longer than a keystroke. */
import { callRecord } from "../../cells/call/call.ts";
import { findRecord } from "../../cells/catalogue.ts";
import { missing } from "../../units/certain.ts";
import { fromExcel } from "./excel-value.ts";

// An error cell crosses as a plain { code, message } and becomes an error again on the other side.
self.onmessage = ({ data }: MessageEvent<{ name: string; given: unknown[] }>) =>
  self.postMessage(callRecord(findRecord(data.name) ?? missing(), data.given.map(fromExcel)).value);
