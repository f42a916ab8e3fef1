import { refuse } from "./file-refusal.ts";
import { parseXml } from "./xml.ts";
import { readDirectory, type ZipEntry } from "./zip-directory.ts";
import { readPart } from "./zip-part.ts";

export interface Relationship {
  readonly id: string;
  /** Last word of the type URI: "worksheet", "sharedStrings", "table" ... */
  readonly type: string;
  /** Part name inside the package; for external targets the address as written. */
  readonly target: string;
  readonly external: boolean;
}

/** Namespace of relationship parts (ECMA-376 part 2). */
const RELATIONSHIPS = "http://schemas.openxmlformats.org/package/2006/relationships";

/** An Open Packaging Conventions package (ECMA-376 part 2): parts by name, relationships, text of parts. */
export class Package {
  private readonly byName: Map<string, ZipEntry>;

  constructor(
    readonly bytes: Uint8Array,
    readonly entries: readonly ZipEntry[],
  ) {
    this.byName = new Map(entries.map((entry) => [entry.name.toLowerCase(), entry]));
  }

  static open(bytes: Uint8Array): Package {
    // A Node Buffer is a Uint8Array whose slice() shares memory; a plain view copies.
    const plain = new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const opened = new Package(plain, readDirectory(plain));
    if (opened.entries.some((entry) => /^_xmlsignatures\//i.test(entry.name))) {
      refuse("signed", "workbook", "without a digital signature", "a signed one", "any change would break it");
    }
    return opened;
  }

  entry(name: string): ZipEntry | undefined {
    return this.byName.get(name.toLowerCase());
  }

  /** The part's text with its byte order mark, undefined when there is no such part. */
  text(name: string): string | undefined {
    const entry = this.entry(name);
    if (!entry) return undefined;
    return decode(readPart(this.bytes, entry), entry.name);
  }

  relationships(part: string): Relationship[] {
    const slash = part.lastIndexOf("/");
    const folder = part.slice(0, slash + 1);
    const text = this.text(`${folder}_rels/${part.slice(slash + 1)}.rels`);
    if (text === undefined) return [];
    const found: Relationship[] = [];
    parseXml(text, {
      open: (tag) => {
        if (tag.local !== "Relationship" || tag.uri !== RELATIONSHIPS) return;
        const { Id: id = "", Type: type = "", Target: target = "", TargetMode: mode } = tag.attributes;
        const external = mode === "External";
        found.push({
          id,
          type: type.slice(type.lastIndexOf("/") + 1),
          target: external ? target : resolve(folder, target),
          external,
        });
      },
    });
    return found;
  }
}

function decode(content: Uint8Array, name: string): string {
  const utf16 = (content[0] === 0xff && content[1] === 0xfe) || (content[0] === 0xfe && content[1] === 0xff);
  if (utf16) refuse("unreadable", name, "written in UTF-8", "UTF-16");
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(content);
  } catch {
    return refuse("unreadable", name, "valid UTF-8", "other bytes");
  }
}

/** A relative target as a part name: "../tables/table1.xml" from "xl/worksheets/". */
function resolve(folder: string, target: string): string {
  const parts = target.startsWith("/") ? [] : folder.split("/").slice(0, -1);
  for (const step of target.replace(/^\//, "").split("/")) {
    if (step === "..") parts.pop();
    else if (step !== "." && step !== "") parts.push(step);
  }
  return parts.join("/");
}
