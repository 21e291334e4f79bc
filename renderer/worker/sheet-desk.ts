/** Lays out paper and writes its files, as the thread answers it. What was computed of a door is kept for the next question. */
import { strToU8 } from "fflate";
import { readDoor } from "../../core/door/read-door.ts";
import { compute } from "../../core/review/compute.ts";
import { type BenchLimits, benchLimits } from "../../core/sheet/bench-limits.ts";
import { leafSvg, leafSvgFile } from "../../core/sheet/leaf-svg.ts";
import { outlined } from "../../core/sheet/outlined.ts";
import { PAPERS } from "../../core/sheet/paper.ts";
import { type PaperDocument, paperSet } from "../../core/sheet/paper-set.ts";
import { holdToSet, type SheetInput, sheetInput } from "../../core/sheet/sheet-input.ts";
import { type SheetFile, sheetSet, zipFile } from "../../core/sheet/sheet-set.ts";
import type { PaperView, SheetAnswer, SheetOrder, SheetTask, SheetWant } from "./sheet-messages.ts";

/** What a task came to; files are written when the first is asked for. */
interface Laid {
  readonly task: SheetTask;
  readonly input: SheetInput;
  readonly documents: readonly PaperDocument[];
  files: readonly SheetFile[] | null;
}

type Told =
  | { readonly kind: "sheets"; readonly view: PaperView }
  | { readonly kind: "bytes"; readonly bytes: Uint8Array }
  | { readonly kind: "refused"; readonly reasons: readonly string[] };

export class SheetDesk {
  private last: Laid | null = null;
  private samples: { readonly text: string; readonly bench: BenchLimits } | null = null;

  async answer({ id, task, want }: SheetOrder): Promise<SheetAnswer> {
    return { id, ...(await this.told(task, want)) };
  }

  private async told(task: SheetTask, want: SheetWant): Promise<Told> {
    const laid = await this.laid(task);
    if ("reasons" in laid) return { kind: "refused", reasons: laid.reasons };
    if (want.kind === "sheets") return { kind: "sheets", view: viewOf(laid) };
    if (want.kind === "sheet") return bytesOr(sheetFile(laid, want), want.sheet);
    laid.files ??= await sheetSet(laid.input, PAPERS[task.paper], task.symbols);
    if (want.kind === "archive") return { kind: "bytes", bytes: zipFile(want.folder, laid.files) };
    return bytesOr(laid.files.find(({ name }) => name === want.name)?.bytes, want.name);
  }

  private async laid(task: SheetTask): Promise<Laid | { readonly reasons: readonly string[] }> {
    if (this.last !== null && sameTask(this.last.task, task)) return this.last;
    const read = readDoor(task.text);
    if (!read.ok) return { reasons: read.errors.map(({ message }) => message) };
    const computed = compute(read.door);
    // The samples take longest and hang on the door alone.
    if (this.samples?.text !== task.text) this.samples = { text: task.text, bench: benchLimits(computed) };
    const { bench } = this.samples;
    const input = sheetInput(read.door, read.file, task.units, task.study, computed, bench);
    const documents = await paperSet(input, PAPERS[task.paper], task.symbols);
    this.last = { task, input, documents, files: null };
    return this.last;
  }
}

function sameTask(a: SheetTask, b: SheetTask): boolean {
  const plain = ({ study: _study, ...rest }: SheetTask) => JSON.stringify(rest);
  return plain(a) === plain(b) && JSON.stringify(a.study) === JSON.stringify(b.study);
}

function viewOf({ input, documents }: Laid): PaperView {
  return {
    documents: documents.map(({ leaves, ...rest }) => ({
      ...rest,
      sheets: leaves.map((leaf) => ({
        name: leaf.name,
        widthMm: leaf.widthMm,
        heightMm: leaf.heightMm,
        svg: leafSvg(leaf),
      })),
    })),
    fails: input.findings.filter(({ status }) => status === "fail").map(({ message }) => message),
    hold: holdToSet(input)?.grounds ?? null,
  };
}

function sheetFile(
  { documents, input }: Laid,
  want: Extract<SheetWant, { kind: "sheet" }>,
): Uint8Array | undefined {
  const document = documents.find((one) => one.name === want.document);
  const leaf = document?.leaves.find((one) => one.name === want.sheet);
  if (document === undefined || leaf === undefined) return undefined;
  if (want.outlined) return strToU8(outlined(leafSvg(leaf)));
  return strToU8(leafSvgFile(leaf, `${document.title}: ${input.door.name}`));
}

function bytesOr(bytes: Uint8Array | undefined, name: string): Told {
  if (bytes === undefined) return { kind: "refused", reasons: [`This door has no ${name}.`] };
  return { kind: "bytes", bytes };
}
