/**
 * Which documents are open in a page that still lives: their recovery copies are no leftovers of a crash. A page holds a
 * lock for each of its documents; the browser lets go of it when the page ends, however it ends.
 */
const PREFIX = "swingstill-document-";

export class LivingDocuments {
  private readonly locks: LockManager | undefined;
  private readonly mine = new Set<string>();

  constructor(locks: LockManager | undefined) {
    this.locks = locks;
  }

  /** This page has the document open, until the page ends. */
  claim(document: string): void {
    if (this.locks === undefined || this.mine.has(document)) return;
    this.mine.add(document);
    void this.locks.request(PREFIX + document, () => new Promise(() => {}));
  }

  /** Documents open in pages, this one included. */
  async elsewhere(): Promise<ReadonlySet<string>> {
    const state = await this.locks?.query();
    const names = (state?.held ?? []).map(({ name }) => name ?? "");
    return new Set(names.filter((n) => n.startsWith(PREFIX)).map((n) => n.slice(PREFIX.length)));
  }
}
