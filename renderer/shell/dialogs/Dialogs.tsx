/** The one dialog that may be open. */
import type { ReactNode } from "react";
import { Button, Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import type { FoundSnapshot } from "../../../electron/bridge.ts";
import type { UnsavedAnswer } from "../../state/documents.ts";
import type { DialogState } from "../ui-store.ts";
import { useUi, useWorkbench } from "../workbench.ts";
import { ExampleList } from "./ExampleList.tsx";
import { Help } from "./Help.tsx";

export function Dialogs(): ReactNode {
  const { ui } = useWorkbench();
  const dialog = useUi((state) => state.dialog);
  const close = (): void => {
    if (dialog?.kind === "unsaved") dialog.answer("stay");
    ui.setState({ dialog: null });
  };
  const wide = dialog?.kind === "help" || dialog?.kind === "new";
  return (
    <ModalOverlay
      className="overlay"
      isOpen={dialog !== null}
      isDismissable={dialog?.kind !== "recovery"}
      onOpenChange={(open) => {
        if (!open) close();
      }}
    >
      <Modal className={`modal ${wide ? "modal-wide" : ""}`}>
        <Dialog
          className="dialog"
          role={dialog?.kind === "unsaved" || dialog?.kind === "notice" ? "alertdialog" : "dialog"}
        >
          {dialog !== null && <Inside dialog={dialog} close={close} />}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Inside({ dialog, close }: { dialog: DialogState; close: () => void }): ReactNode {
  switch (dialog.kind) {
    case "new":
      return (
        <>
          <Heading slot="title">Start from an example</Heading>
          <ExampleList onChosen={close} />
          <Close close={close}>Cancel</Close>
        </>
      );
    case "help":
      return (
        <>
          <Help />
          <Close close={close}>Close</Close>
        </>
      );
    case "unsaved":
      return <Unsaved name={dialog.name} answer={dialog.answer} />;
    case "recovery":
      return <Recovery found={dialog.found} />;
    case "notice":
      return (
        <>
          <Heading slot="title">{dialog.title}</Heading>
          <ul className="reasons">
            {dialog.reasons.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
          <Close close={close}>Close</Close>
        </>
      );
  }
}

function Close({ close, children }: { close: () => void; children: ReactNode }): ReactNode {
  return (
    <div className="dialog-foot">
      <Button className="button button-main" onPress={close} autoFocus>
        {children}
      </Button>
    </div>
  );
}

function Unsaved({ name, answer }: { name: string; answer: (answer: UnsavedAnswer) => void }): ReactNode {
  const { ui } = useWorkbench();
  const give = (what: UnsavedAnswer): void => {
    ui.setState({ dialog: null });
    answer(what);
  };
  return (
    <>
      <Heading slot="title">Keep the changes to {name}?</Heading>
      <p>They are not saved yet.</p>
      <div className="dialog-foot">
        <Button className="button" onPress={() => give("stay")}>
          Cancel
        </Button>
        <Button className="button" onPress={() => give("discard")}>
          Don’t save
        </Button>
        <Button className="button button-main" onPress={() => give("save")} autoFocus>
          Save
        </Button>
      </div>
    </>
  );
}

function Recovery({ found }: { found: readonly FoundSnapshot[] }): ReactNode {
  const { ui, documents } = useWorkbench();
  const done = (left: readonly FoundSnapshot[]): void =>
    ui.setState({ dialog: left.length === 0 ? null : { kind: "recovery", found: left } });
  return (
    <>
      <Heading slot="title">Unsaved work was found</Heading>
      <p>The program ended before it was saved.</p>
      <ul className="found">
        {found.map((snapshot) => {
          const others = found.filter((one) => one !== snapshot);
          return (
            <li key={snapshot.document}>
              <span>
                {snapshot.name}
                <span className="found-when">{new Date(snapshot.savedAt).toLocaleString()}</span>
              </span>
              <Button
                className="button"
                onPress={() => {
                  void documents.discard(snapshot);
                  done(others);
                }}
              >
                Throw away
              </Button>
              <Button
                className="button button-main"
                onPress={() => {
                  void documents.recover(snapshot);
                  done([]);
                }}
              >
                Recover
              </Button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
