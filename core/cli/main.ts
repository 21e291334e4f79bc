/**
 * The command line.
 *
 * @param argv the words after the program's name
 * @returns the exit code: 0 done, 1 the door has a failing finding, 2 the call or the file is wrong
 */
export async function main(argv: readonly string[]): Promise<number> {
  process.stderr.write(`swingstill: unknown command ${JSON.stringify(argv[0] ?? "")}\n`);
  return 2;
}
