import { SaxesParser } from "saxes";
import { refuse } from "./file-refusal.ts";

export interface Tag {
  readonly local: string;
  /** Namespace; the strict ones of ISO/IEC 29500 stand as their transitional twins. */
  readonly uri: string;
  /** Values by local name: attributes of foreign namespaces keep their prefix. */
  readonly attributes: Readonly<Record<string, string | undefined>>;
  /** Offset just after the tag's ">". */
  readonly end: number;
  readonly selfClosing: boolean;
}

interface XmlHandlers {
  readonly open?: (tag: Tag) => void;
  readonly text?: (text: string) => void;
  readonly close?: (local: string, end: number, uri: string) => void;
}

const STRICT = "http://purl.oclc.org/ooxml/";

/** Strict files differ in the names of their namespaces only, as far as they are read here (ISO/IEC 29500-1, annex A). */
const transitional = (uri: string): string =>
  uri.startsWith(STRICT)
    ? uri
        .replace(`${STRICT}spreadsheetml/main`, "http://schemas.openxmlformats.org/spreadsheetml/2006/main")
        .replace(`${STRICT}officeDocument/`, "http://schemas.openxmlformats.org/officeDocument/2006/")
    : uri;

/** No part of a workbook nests so deep; beyond, looking up a namespace through all of them takes minutes. */
const DEEPEST = 256;

/** Reads a part with a namespace-aware parser. A document type declaration is refused: entities are an attack here. */
export function parseXml(text: string, handlers: XmlHandlers): void {
  const parser = new SaxesParser({ xmlns: true, position: false });
  parser.on("error", (error) => refuse("damaged", "XML", "well formed", error.message));
  parser.on("doctype", () =>
    refuse("external-entity", "part", "without a document type", "one", "entities are not read"),
  );
  const { open, text: seen, close } = handlers;
  let depth = 0;
  parser.on("opentagstart", () => {
    if (++depth > DEEPEST) refuse("too-large", "part", `nested at most ${DEEPEST} elements deep`, "a deeper one");
  });
  if (open) {
    parser.on("opentag", (tag) => {
      const attributes: Record<string, string> = {};
      for (const key in tag.attributes) attributes[key] = tag.attributes[key]?.value ?? "";
      open({
        local: tag.local,
        uri: transitional(tag.uri),
        attributes,
        end: parser.position,
        selfClosing: tag.isSelfClosing,
      });
    });
  }
  if (seen) {
    parser.on("text", seen);
    parser.on("cdata", seen);
  }
  parser.on("closetag", (tag) => {
    depth--;
    close?.(tag.local, parser.position, transitional(tag.uri));
  });
  parser.write(text).close();
}
