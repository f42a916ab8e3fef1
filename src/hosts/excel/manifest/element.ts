import { missing } from "../../../units/certain.ts";

/** Writes XML elements, indented, everything escaped. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly content: string | readonly XmlElement[];
}

/** el("Id", {}, "text") or el("Hosts", {}, [children]). */
export const el = (
  name: string,
  attributes: Readonly<Record<string, string>> = {},
  content: string | readonly XmlElement[] = "",
): XmlElement => ({ name, attributes, content });

const ESCAPES: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (mark) => ESCAPES[mark] ?? missing());

export function writeXml({ name, attributes, content }: XmlElement, indent = ""): string {
  const head = [name, ...Object.entries(attributes).map(([key, value]) => `${key}="${escaped(value)}"`)].join(" ");
  if (content.length === 0) return `${indent}<${head}/>`;
  if (typeof content === "string") return `${indent}<${head}>${escaped(content)}</${name}>`;
  return [`${indent}<${head}>`, ...content.map((child) => writeXml(child, `${indent}  `)), `${indent}</${name}>`].join(
    "\n",
  );
}
