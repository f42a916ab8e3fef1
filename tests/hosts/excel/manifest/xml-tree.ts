/** A small tree of an XML text, by an independent parser that checks well-formedness and namespaces. */
import { SaxesParser } from "saxes";

export interface XmlNode {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: XmlNode[];
  text: string;
}

/** Throws where the text is not well formed or a prefix is not declared. */
export function xmlTree(text: string): XmlNode {
  const parser = new SaxesParser({ xmlns: true });
  const top: XmlNode = { name: "", attributes: {}, children: [], text: "" };
  const open = [top];
  parser.on("error", (problem) => {
    throw problem;
  });
  parser.on("opentag", ({ name, attributes }) => {
    const values = Object.fromEntries(Object.entries(attributes).map(([key, { value }]) => [key, value]));
    const node: XmlNode = { name, attributes: values, children: [], text: "" };
    open.at(-1)!.children.push(node);
    open.push(node);
  });
  parser.on("text", (part) => {
    open.at(-1)!.text += part.trim();
  });
  parser.on("closetag", () => open.pop());
  parser.write(text).close();
  return top.children[0]!;
}

/** The node and everything below it. */
export const everyNode = (node: XmlNode): XmlNode[] => [node, ...node.children.flatMap(everyNode)];
