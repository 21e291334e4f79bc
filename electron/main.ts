/** The desktop program's entry: a command of the command line, or the window. */
import { app } from "electron";
import { ownWords, readStart } from "./arguments.ts";
import { runCommand } from "./command.ts";
import { openShell } from "./shell.ts";

const start = readStart(ownWords(process.argv, app.isPackaged), process.cwd());

if (start.kind === "command") void runCommand(import.meta.dirname, start.argv);
else openShell(import.meta.dirname, start.files);
