/** The set's files as a person chooses among them. */
import type { ExportType } from "../../electron/bridge.ts";

const TYPES: Readonly<Record<string, ExportType>> = {
  pdf: "application/pdf",
  html: "text/html",
  svg: "image/svg+xml",
  dxf: "image/vnd.dxf",
  png: "image/png",
  c: "text/x-c",
  cir: "text/x-netlist",
};

const endingOf = (name: string): string => name.slice(name.lastIndexOf(".") + 1).toLowerCase();

/** Throws for an ending that is none of the set's documents'. */
export function typeOf(name: string): ExportType {
  const type = TYPES[endingOf(name)];
  if (type === undefined) throw new Error(`no kind of file ends as ${name}`);
  return type;
}

const WORDS: Readonly<Record<string, string>> = { c: "C", cir: "Netlist" };

/** "PDF", "Flap DXF": short, beside the document's name. */
export function labelOf(name: string): string {
  const ending = endingOf(name);
  const words = WORDS[ending] ?? ending.toUpperCase();
  const part = /^template-(\w+)\./.exec(name)?.[1];
  return part === undefined ? words : `${part.charAt(0).toUpperCase()}${part.slice(1)} ${words}`;
}
