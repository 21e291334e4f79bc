/** Writes the build sheet, template and all that goes with them, as one archive: fonts and PDF are loaded only here. */
import { readDoor } from "../../core/door/read-door.ts";
import { PAPERS } from "../../core/sheet/paper.ts";
import { sheetInput } from "../../core/sheet/sheet-input.ts";
import { sheetSet, zipFile } from "../../core/sheet/sheet-set.ts";
import type { SheetAnswer, SheetOrder } from "./sheet-messages.ts";

async function write({ text, units, paper, study, name }: SheetOrder): Promise<SheetAnswer> {
  const read = readDoor(text);
  if (!read.ok) return { kind: "refused", reasons: read.errors.map(({ message }) => message) };
  const input = sheetInput(read.door, read.file, units, study);
  return { kind: "zip", bytes: zipFile(name, await sheetSet(input, PAPERS[paper])) };
}

self.onmessage = ({ data }: MessageEvent<SheetOrder>): void => {
  const port = self as unknown as Worker;
  write(data).then(
    (answer) => port.postMessage(answer),
    (error: unknown) => port.postMessage({ kind: "refused", reasons: [String(error)] }),
  );
};
