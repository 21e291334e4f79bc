/** What the study spreads and how far: each input with its usual spread and why, and the file's own word in its place. */
import { type ReactNode, useId, useMemo, useState } from "react";
import { Button } from "react-aria-components";
import type { Door } from "../../core/door/door.ts";
import { Entry } from "../parts/EntryInput.tsx";
import { labelInSentence } from "../parts/labels.ts";
import { changeEntries } from "../state/entries.ts";
import { TOLERANCES } from "../state/spread-text.ts";
import { moreKeys, type SpreadRow, spreadRows } from "../state/spreads.ts";
import { Icon } from "../ui/icons.tsx";
import { usePage, useSettings, useUi, useWorkbench } from "./workbench.ts";

export function Tolerances(): ReactNode {
  const door = usePage((state) => state.view?.door ?? null);
  const file = usePage((state) => state.document?.file ?? null);
  const units = useSettings((state) => state.units);
  const wrong = usePage((state) => state.faults.some(({ path }) => path.startsWith(TOLERANCES)));
  const wanted = useUi((state) => state.wanted?.startsWith(TOLERANCES) ?? false);
  const [opened, setOpened] = useState(false);
  const rows = useMemo(
    () => (door === null || file === null ? [] : spreadRows(door, file, units)),
    [door, file, units],
  );
  if (door === null) return null;
  const own = rows.filter((row) => row.own).length;
  return (
    <details
      className="tolerances"
      open={opened || wrong || wanted}
      onToggle={(event) => setOpened(event.currentTarget.open)}
    >
      <summary>
        What is aimed at and what spreads{" "}
        <span className="tolerances-count">
          {rows.length} inputs, {own === 0 ? "all as usual" : `${own} as the file says`}
        </span>
      </summary>
      <div className="tolerances-aims">
        <Entry path="study.reliability" />
        <Entry path="study.margin" />
      </div>
      <p className="study-note">
        The usual spreads are assumptions. Write your own in their place: “0.5 mm” or “30 %” is ± two standard
        deviations; “-1 mm to 2 mm” are limits, any value between them as likely as another. An emptied place
        takes the usual one again.
      </p>
      <ul className="tolerances-list">
        {rows.map((row) => (
          <Row key={row.key} row={row} door={door} />
        ))}
      </ul>
      <More door={door} rows={rows} />
    </details>
  );
}

function Row({ row, door }: { row: SpreadRow; door: Door }): ReactNode {
  const { page } = useWorkbench();
  const reasonId = useId();
  const { key, usual, reason, own, unused } = row;
  const path = TOLERANCES + key;
  const label = labelWithOwner(key, door);
  const remove = (): void =>
    page.actions.change((f) =>
      changeEntries(`Take out the ${labelInSentence(path)}`, f, [{ path, entry: undefined }]),
    );
  return (
    <li className="tolerance" data-own={own || undefined}>
      <Entry
        path={path}
        label={label}
        fallback={usual === "" ? "does not spread" : usual}
        noteId={reasonId}
      />
      {own ? (
        <Button
          className="button button-icon button-small button-quiet"
          aria-label={`Take out your spread of ${label}`}
          onPress={remove}
        >
          <Icon name="minus" />
        </Button>
      ) : (
        <span />
      )}
      <p id={reasonId} className="tolerance-reason">
        {own && usual !== "" ? `In place of ${usual}. ` : ""}
        {own && usual === "" ? "Your own: it does not spread by itself." : `${reason}.`}
        {unused !== null && ` Not used: ${unused}.`}
      </p>
    </li>
  );
}

/** "Walking speed (Biscuit)": entries of lists by their names. */
function labelWithOwner(key: string, door: Door): string {
  const [, list, index] = /^(animals|flap\.extraMasses)\.(\d+)\./.exec(key) ?? [];
  const owner = (list === "animals" ? door.animals : door.flap.extraMasses)[Number(index)]?.name;
  const words = labelInSentence(key);
  const named = list === undefined || owner === undefined ? words : words.replace(/\(.*\)$/, `(${owner})`);
  return named.charAt(0).toUpperCase() + named.slice(1);
}

/** What an input starts with that did not spread before. */
const FIRST = "5 %";

function More({ door, rows }: { door: Door; rows: readonly SpreadRow[] }): ReactNode {
  const { page, ui } = useWorkbench();
  const keys = useMemo(() => moreKeys(door, rows), [door, rows]);
  const add = (key: string): void => {
    const path = TOLERANCES + key;
    page.actions.change((f) =>
      changeEntries(`Spread ${labelInSentence(key)} by ${FIRST}`, f, [{ path, entry: FIRST }]),
    );
    ui.setState({ wanted: path });
  };
  return (
    <label className="tolerances-more">
      Let another input spread too{" "}
      <select className="entry-input" value="" onChange={({ target }) => add(target.value)}>
        <option value="" disabled>
          choose one
        </option>
        {keys.map((key) => (
          <option key={key} value={key}>
            {labelWithOwner(key, door)}
          </option>
        ))}
      </select>
    </label>
  );
}
