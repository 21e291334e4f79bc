/** The window's head: the door's name, its file, undo and redo, and the menus. */
import { type ReactNode, useState } from "react";
import {
  Button,
  Menu,
  Header as MenuHeading,
  MenuItem,
  MenuSection,
  MenuTrigger,
  Separator,
} from "react-aria-components";
import type { RecentDoor } from "../../electron/bridge.ts";
import { changeEntries, entryText } from "../state/entries.ts";
import { isUnsaved } from "../state/page-store.ts";
import { Icon } from "../ui/icons.tsx";
import { Overlay } from "../ui/Overlay.tsx";
import type { CommandName } from "./commands.ts";
import { usePage, useSettings, useWorkbench } from "./workbench.ts";

export function Header(): ReactNode {
  return (
    <header className="head">
      <span className="brand" aria-hidden="true">
        <svg viewBox="0 0 24 24" className="brand-mark" aria-hidden="true">
          <path d="M4 3h16M6 3v18M6 6l11 12" />
          <circle cx="17" cy="18" r="1.800" />
        </svg>
      </span>
      <h1 className="unseen">Swingstill</h1>
      <DoorName />
      <UndoRedo />
      <span className="head-gap" />
      <DoorMenu />
      <PaperButton />
      <ViewMenu />
      <CommandButton command="help" label="Help">
        <Icon name="help" /> Help
      </CommandButton>
    </header>
  );
}

function DoorName(): ReactNode {
  const { page } = useWorkbench();
  const file = usePage((state) => state.document?.file);
  const fileName = usePage((state) => state.document?.name);
  const unsaved = usePage(isUnsaved);
  if (file === undefined) return <span className="door-name">Swingstill</span>;
  const finish = () => page.actions.endGesture();
  return (
    <div className="door-name">
      <input
        className="name-input"
        aria-label="Name of the door"
        value={entryText(file, "name")}
        placeholder="Unnamed door"
        onChange={({ target: { value } }) =>
          page.actions.change(
            (f) =>
              changeEntries("Name the door", f, [{ path: "name", entry: value === "" ? undefined : value }]),
            "name",
          )
        }
        onBlur={finish}
        onKeyDown={({ key }) => {
          if (key === "Enter") finish();
        }}
      />
      <span className="file-name">
        {fileName}
        {unsaved ? ", not saved" : ""}
      </span>
    </div>
  );
}

function UndoRedo(): ReactNode {
  const undoName = usePage(({ history }) => history.done[history.done.length - 1]?.name);
  const redoName = usePage(({ history }) => history.undone[history.undone.length - 1]?.name);
  return (
    <div className="undo-redo">
      <CommandButton command="undo" label={named("Undo", undoName)} disabled={undoName === undefined} icon>
        <Icon name="undo" />
      </CommandButton>
      <CommandButton command="redo" label={named("Redo", redoName)} disabled={redoName === undefined} icon>
        <Icon name="redo" />
      </CommandButton>
      <span className="undo-name">{undoName ?? ""}</span>
    </div>
  );
}

const named = (verb: string, step: string | undefined): string =>
  step === undefined ? verb : `${verb}: ${step}`;

interface CommandButtonProps {
  readonly command: CommandName;
  readonly label: string;
  readonly disabled?: boolean;
  readonly icon?: boolean;
  readonly children: ReactNode;
}

function CommandButton({
  command,
  label,
  disabled = false,
  icon = false,
  children,
}: CommandButtonProps): ReactNode {
  const { commands } = useWorkbench();
  return (
    <Button
      className={`button ${icon ? "button-icon" : ""}`}
      aria-label={label}
      isDisabled={disabled}
      onPress={() => commands.run(command)}
    >
      {children}
    </Button>
  );
}

function PaperButton(): ReactNode {
  const there = usePage((state) => state.document !== null);
  return (
    <CommandButton command="paper" label="Paper: look, print, save" disabled={!there}>
      Paper
    </CommandButton>
  );
}

function DoorMenu(): ReactNode {
  const { commands, bridge, documents } = useWorkbench();
  const there = usePage((state) => state.document !== null);
  const [recent, setRecent] = useState<readonly RecentDoor[]>([]);
  const onOpenChange = (open: boolean): void => {
    if (open) bridge.recentDoors().then(setRecent, () => setRecent([]));
  };
  const item = (id: CommandName, label: string, keys = "") => (
    <MenuItem key={id} id={id} className="menu-item" textValue={label} onAction={() => commands.run(id)}>
      <span>{label}</span>
      <kbd>{keys}</kbd>
    </MenuItem>
  );
  return (
    <MenuTrigger onOpenChange={onOpenChange}>
      <Button className="button">
        Door <Icon name="down" />
      </Button>
      <Overlay>
        <Menu
          className="menu"
          disabledKeys={
            there
              ? []
              : ["save", "save-as", "paper", "export-sheet", "export-trace", "export-picture", "export-film"]
          }
        >
          {item("new", "New from an example…")}
          {item("open", "Open…", "Ctrl O")}
          <Separator className="menu-line" />
          {item("save", "Save", "Ctrl S")}
          {item("save-as", "Save as…", "Ctrl Shift S")}
          <Separator className="menu-line" />
          {item("paper", "Paper: look, print, save…", "Ctrl P")}
          {item("export-sheet", "All sheets and data as one archive…")}
          <Separator className="menu-line" />
          {item("export-trace", "Swing as CSV…")}
          {item("export-picture", "Picture of the door…")}
          {item("export-film", "Film of the passage…")}
          {recent.length > 0 && (
            <MenuSection>
              <MenuHeading className="menu-heading">Recent doors</MenuHeading>
              {recent.map((door) => (
                <MenuItem
                  key={door.token}
                  id={door.token}
                  className="menu-item"
                  textValue={door.name}
                  onAction={() => void documents.openRecent(door)}
                >
                  <span>{door.name}</span>
                  <span className="menu-aside">{door.folder}</span>
                </MenuItem>
              ))}
            </MenuSection>
          )}
        </Menu>
      </Overlay>
    </MenuTrigger>
  );
}

function ViewMenu(): ReactNode {
  const { settings } = useWorkbench();
  const { theme, units, zoom } = useSettings((state) => state);
  const choices: readonly (readonly [string, string, readonly (readonly [string, string])[], string])[] = [
    [
      "units",
      "Figures in",
      [
        ["metric", "Metric"],
        ["inch", "Inches"],
      ],
      units,
    ],
    [
      "theme",
      "Colours",
      [
        ["system", "As the system"],
        ["light", "Light"],
        ["dark", "Dark"],
      ],
      theme,
    ],
    [
      "zoom",
      "Text size",
      [
        ["0.9", "Small"],
        ["1", "Usual"],
        ["1.25", "Large"],
        ["1.5", "Larger"],
        ["2", "Double"],
      ],
      String(zoom),
    ],
  ];
  const choose = (kind: string, value: string): void =>
    settings.setState(kind === "zoom" ? { zoom: Number(value) } : { [kind]: value });
  return (
    <MenuTrigger>
      <Button className="button">
        View <Icon name="down" />
      </Button>
      <Overlay>
        <Menu className="menu">
          {choices.map(([kind, title, options, selected]) => (
            <MenuSection
              key={kind}
              selectionMode="single"
              disallowEmptySelection
              selectedKeys={[`${kind}:${selected}`]}
              onSelectionChange={(keys) => {
                const [key] = keys;
                if (key !== undefined) choose(kind, String(key).slice(kind.length + 1));
              }}
            >
              <MenuHeading className="menu-heading">{title}</MenuHeading>
              {options.map(([value, label]) => (
                <MenuItem key={value} id={`${kind}:${value}`} className="menu-item" textValue={label}>
                  {({ isSelected }) => (
                    <>
                      <span>{label}</span>
                      {isSelected && <Icon name="ok" />}
                    </>
                  )}
                </MenuItem>
              ))}
            </MenuSection>
          ))}
        </Menu>
      </Overlay>
    </MenuTrigger>
  );
}
