/** Doors to start from, bundled as their files' text. */

export interface Example {
  /** File name without its ending. */
  readonly id: string;
  readonly name: string;
  readonly notes: string;
  readonly text: string;
}

const files = import.meta.glob<string>("../assets/examples/*.door.json", {
  query: "?raw",
  import: "default",
  eager: true,
});

export const EXAMPLES: readonly Example[] = Object.entries(files)
  .map(([path, text]) => exampleOf(path, text))
  .sort((a, b) => a.name.localeCompare(b.name, "en"));

function exampleOf(path: string, text: string): Example {
  const { name, notes } = JSON.parse(text) as { name?: string; notes?: string };
  const id = path.slice(path.lastIndexOf("/") + 1).replace(/\.door\.json$/, "");
  return { id, name: name ?? id, notes: notes ?? "", text };
}

/** What a first start shows. */
export const FIRST_EXAMPLE: Example | undefined =
  EXAMPLES.find(({ id }) => id.includes("medium-dog")) ?? EXAMPLES[0];
