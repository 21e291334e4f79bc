/** Lists of the door file: animals, extra masses, the points of the pull curve. Adding and taking out are steps. */
import type { ReactNode } from "react";
import { Button } from "react-aria-components";
import type { CurveField, ListField } from "../../core/door/field.ts";
import { type DoorFile, fileEntry } from "../../core/door/file.ts";
import type { Json, JsonObject } from "../../core/door/json.ts";
import { fieldAt } from "../../core/door/schema.ts";
import { usePage, useWorkbench } from "../shell/workbench.ts";
import { changeEntries } from "../state/entries.ts";
import { Icon } from "../ui/icons.tsx";
import { Entry } from "./EntryInput.tsx";

function listAt(file: DoorFile | undefined, path: string): readonly Json[] {
  const entry = file === undefined ? undefined : fileEntry(file, path);
  return Array.isArray(entry) ? entry : NONE;
}

const NONE: readonly Json[] = [];

/** Keys shown at once; the others fold away. */
const FIRST_KEYS: Readonly<Record<string, number>> = { animals: 6, "flap.extraMasses": 3 };

/** Entries of one form, as the schema lists its keys. */
export function SectionList({ path, field }: { path: string; field: ListField }): ReactNode {
  const { page } = useWorkbench();
  const entries = usePage(({ document }) => listAt(document?.file, path));
  const add = (): void => {
    const entry = newEntry(field, entries, path);
    const name = `Add ${article(field.entry)}`;
    page.actions.change((f) => changeEntries(name, f, [{ path: `${path}.${entries.length}`, entry }]));
  };
  return (
    <div className="list">
      {entries.map((entry, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an entry is known by its place in the file
        <ListEntry key={index} path={`${path}.${index}`} field={field} entry={entry} count={entries.length} />
      ))}
      {entries.length < field.most && (
        <Button className="button button-small" onPress={add}>
          <Icon name="plus" /> Add {article(field.entry)}
        </Button>
      )}
    </div>
  );
}

function ListEntry({
  path,
  field,
  entry,
  count,
}: {
  path: string;
  field: ListField;
  entry: Json;
  count: number;
}): ReactNode {
  const { page } = useWorkbench();
  const keys = Object.keys(field.fields);
  const first = FIRST_KEYS[path.slice(0, path.lastIndexOf("."))] ?? keys.length;
  const name = nameOf(entry, field.entry);
  const remove = (): void => {
    page.actions.change((f) => changeEntries(`Take out ${name}`, f, [{ path, entry: undefined }]));
  };
  return (
    <fieldset className="list-entry">
      <legend>{name}</legend>
      {keys.slice(0, first).map((key) => (
        <Entry key={key} path={`${path}.${key}`} />
      ))}
      {keys.length > first && (
        <details className="more">
          <summary>More about {name}</summary>
          {keys.slice(first).map((key) => (
            <Entry key={key} path={`${path}.${key}`} />
          ))}
        </details>
      )}
      {count > field.fewest && (
        <Button className="button button-small button-quiet" onPress={remove}>
          <Icon name="minus" /> Take out {name}
        </Button>
      )}
    </fieldset>
  );
}

function nameOf(entry: Json, kind: string): string {
  const name =
    typeof entry === "object" && entry !== null && !Array.isArray(entry) ? (entry as JsonObject).name : "";
  return typeof name === "string" && name !== "" ? name : `this ${kind}`;
}

const article = (noun: string): string => `${/^[aeiou]/.test(noun) ? "an" : "a"} ${noun}`;

/** A copy of the last entry under a new name: its quantities are near, and all of them are there. */
function newEntry(field: ListField, entries: readonly Json[], path: string): Json {
  const last = entries[entries.length - 1];
  const capital = field.entry.charAt(0).toUpperCase() + field.entry.slice(1);
  const name = `${capital} ${entries.length + 1}`;
  if (typeof last === "object" && last !== null && !Array.isArray(last)) return { ...last, name };
  return path === "flap.extraMasses" ? { name, mass: "50 g", distanceFromHinge: "20 cm" } : { name };
}

/** A curve as a table of its points. */
export function CurveTable({ path, field }: { path: string; field: CurveField }): ReactNode {
  const { page } = useWorkbench();
  const points = usePage(({ document }) => listAt(document?.file, path));
  const change = (name: string, entry: Json | undefined, index: number): void =>
    page.actions.change((f) => changeEntries(name, f, [{ path: `${path}.${index}`, entry }]));
  return (
    <table className="curve">
      <caption>{field.doc}</caption>
      <thead>
        <tr>
          {field.columns.map(({ key }) => (
            <th key={key} scope="col">
              {key === "stroke" ? "Stroke" : "Pull"}
            </th>
          ))}
          <th scope="col">
            <span className="unseen">Take out</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {points.map((_, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a point is known by its place in the file
          <tr key={index}>
            {field.columns.map(({ key }, column) => (
              <td key={key}>
                <Entry
                  path={`${path}.${index}.${column}`}
                  label={`${key === "stroke" ? "Stroke" : "Pull"}, point ${index + 1}`}
                  labelUnseen
                />
              </td>
            ))}
            <td>
              {points.length > field.fewest && (
                <Button
                  className="button button-icon"
                  aria-label={`Take out point ${index + 1}`}
                  onPress={() => change(`Take out point ${index + 1} of the pull curve`, undefined, index)}
                >
                  <Icon name="minus" />
                </Button>
              )}
            </td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <td colSpan={field.columns.length + 1}>
            <Button
              className="button button-small"
              onPress={() =>
                change(
                  "Add a point to the pull curve",
                  points[points.length - 1] ?? ["0 mm", "1 N"],
                  points.length,
                )
              }
            >
              <Icon name="plus" /> Add a point
            </Button>
          </td>
        </tr>
      </tfoot>
    </table>
  );
}

/** Whether a key is edited as a list or a table. */
export function ListOrCurve({ path }: { path: string }): ReactNode {
  const field = fieldAt(path);
  if (field?.kind === "curve") return <CurveTable path={path} field={field} />;
  return field?.kind === "list" ? <SectionList path={path} field={field} /> : null;
}
