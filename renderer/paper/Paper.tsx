/** The paper view: what leaves the bench on paper, as it will be printed. Over everything else; Esc leads back to the door. */
import "./paper.css";
import { type ReactNode, useEffect, useMemo } from "react";
import { Button, Dialog, Heading, Modal, ModalOverlay } from "react-aria-components";
import { useStore } from "zustand";
import { PAPERS } from "../../core/sheet/paper.ts";
import { createSheetClient } from "../export/sheet-client.ts";
import { useUi, useWorkbench } from "../shell/workbench.ts";
import { Icon } from "../ui/icons.tsx";
import { Choices } from "./Choices.tsx";
import { PaperContext } from "./context.ts";
import { Desk } from "./Desk.tsx";
import { Index } from "./Index.tsx";
import { createPaperStore, type PaperStore, sheetsToPrint } from "./paper-store.ts";
import { facesReady, printFrom } from "./print.ts";
import { Ticket } from "./Ticket.tsx";
import { usePaperKeys } from "./use-keys.ts";

export default function Paper(): ReactNode {
  const { page, settings, ui } = useWorkbench();
  const client = useMemo(() => createSheetClient(), []);
  const paper = useMemo(() => createPaperStore(page, settings, client), [page, settings, client]);
  useEffect(() => {
    const end = paper.follow();
    return () => {
      end();
      client.end();
    };
  }, [paper, client]);
  usePrinting(paper);
  usePaperKeys(paper);
  const close = (): void => ui.setState({ paper: null });
  return (
    <ModalOverlay className="paper-overlay" isOpen onOpenChange={(open) => !open && close()}>
      <Modal className="paper-modal">
        <Dialog className="paper-dialog">
          <PaperContext value={{ paper, client }}>
            <div className="paper">
              <aside className="paper-side">
                <div className="paper-head">
                  <Button className="button" onPress={close}>
                    <Icon name="undo" /> Back to the door
                  </Button>
                  <Heading slot="title">Paper</Heading>
                </div>
                <Choices />
                <Index />
                <Ticket />
              </aside>
              <Desk />
            </div>
          </PaperContext>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

/** Whatever way it is printed, the sheets of the document shown are what is printed; `print` in the page's state asks for it. */
function usePrinting(paper: PaperStore): void {
  const { ui } = useWorkbench();
  const wanted = useUi((state) => state.paper === "print");
  const there = useStore(paper.store, (state) => sheetsToPrint(state).length > 0);
  // A face that comes only while the printer draws comes too late.
  useEffect(() => void facesReady(document), []);
  useEffect(
    () =>
      printFrom(
        () => {
          const state = paper.store.getState();
          return { paper: PAPERS[state.task?.paper ?? "a4"], sheets: sheetsToPrint(state) };
        },
        () => paper.range("document"),
      ),
    [paper],
  );
  useEffect(() => {
    if (!wanted) return;
    ui.setState({ paper: "look" });
    if (there) void facesReady(document).then(() => window.print());
  }, [wanted, there, ui]);
}
