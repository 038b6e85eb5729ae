import { parseDocument } from "htmlparser2";
import { expect } from "vitest";

interface Node {
  readonly type: string;
  readonly name?: string;
  readonly data?: string;
  readonly attribs?: Readonly<Record<string, string>>;
  readonly children?: readonly Node[];
}
const TAGS = ["section", "h2", "h3", "ul", "li", "p", "small", "strong", "span", "b", "bdi"];
/** The text of the page, once every element and attribute is known to be one of ours. */
export function textOf(html: string): string {
  const walk = (node: Node): string => {
    expect(["root", "tag", "text"]).toContain(node.type);
    if (node.type === "text") return node.data ?? "";
    if (node.type === "tag") {
      expect(TAGS).toContain(node.name);
      for (const [key, value] of Object.entries(node.attribs ?? {})) {
        expect(["class", "lang"]).toContain(key);
        expect(value).toMatch(key === "lang" ? /^en-(US|GB)$/ : /^steadfare-[a-z]+$/);
      }
    }
    return (node.children ?? []).map(walk).join("");
  };
  return walk(parseDocument(html));
}
