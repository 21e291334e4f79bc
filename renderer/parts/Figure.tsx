/** A figure of the door with its verdict; pressed, it explains itself: formula, what goes in, where it is from. */
import { memo, type ReactNode } from "react";
import { Button, Dialog, DialogTrigger, Heading } from "react-aria-components";
import { getValue } from "../../core/door/path.ts";
import { fieldAt } from "../../core/door/schema.ts";
import type { Finding } from "../../core/review/finding.ts";
import type { ResultDefinition, ResultInput } from "../../core/review/result.ts";
import { resultNamed } from "../../core/review/results.ts";
import { figureText, keyText } from "../figures/format.ts";
import { usePage, useSettings, useWorkbench } from "../shell/workbench.ts";
import { findingsOf } from "../state/page-store.ts";
import type { DoorView, UnitSystem } from "../state/view.ts";
import { Overlay } from "../ui/Overlay.tsx";
import { Status } from "../ui/Status.tsx";
import { labelInSentence } from "./labels.ts";

export const Figure = memo(function Figure({ name }: { name: string }): ReactNode {
  const there = usePage((state) => state.view !== null);
  const definition = resultNamed(name);
  if (!there || definition === undefined) return null;
  return (
    <DialogTrigger>
      <Button className="figure">
        <span className="figure-title">{definition.title}</span>
        <Reading definition={definition} />
      </Button>
      <Overlay placement="right top" offset={12}>
        <Dialog className="explanation" aria-label={`How ${definition.title} comes about`}>
          <Explanation definition={definition} />
        </Dialog>
      </Overlay>
    </DialogTrigger>
  );
});

/** What changes of a figure while the door does. */
function Reading({ definition }: { definition: ResultDefinition }): ReactNode {
  const { name, unit } = definition;
  const units = useSettings((state) => state.units);
  const text = usePage((state) => figureText(state.view?.results[name]?.value ?? null, unit, units));
  const status = usePage((state) => worstAbout(findingsOf(state), name)?.status ?? null);
  return (
    <>
      <span className="figure-value">{text}</span>
      {status === null ? <span className="figure-blank" /> : <Status status={status} quiet />}
    </>
  );
}

function Explanation({ definition }: { definition: ResultDefinition }): ReactNode {
  const { ui } = useWorkbench();
  const view = usePage((state) => state.view);
  const units = useSettings((state) => state.units);
  const verdict = usePage((state) => worstAbout(findingsOf(state), definition.name));
  if (view === null) return null;
  const text = figureText(view.results[definition.name]?.value ?? null, definition.unit, units);
  const exact = view.results[definition.name]?.value ?? null;
  const copy = (): void => {
    const whole = exact === null ? "—" : `${exact} ${definition.unit === "1" ? "" : definition.unit}`.trim();
    navigator.clipboard.writeText(whole).then(
      () => ui.setState({ said: `Copied ${whole}` }),
      () => ui.setState({ said: "The browser did not allow copying" }),
    );
  };
  return (
    <>
      <Heading slot="title" className="explanation-title">
        {definition.title}
      </Heading>
      <p className="explanation-value">
        {text}{" "}
        <Button className="button button-small" onPress={copy}>
          Copy the figure
        </Button>
      </p>
      {verdict !== null && (
        <p className="explanation-verdict">
          <Status status={verdict.status} /> {verdict.message}
        </p>
      )}
      <p className="formula">{definition.formula}</p>
      <InputList inputs={definition.inputs} view={view} units={units} />
      <p className="explanation-source">Source: {definition.source}</p>
    </>
  );
}

/** Above this many, the rest is counted instead of listed. */
const MOST_INPUTS = 14;

function InputList({
  inputs,
  view,
  units,
}: {
  inputs: readonly ResultInput[];
  view: DoorView;
  units: UnitSystem;
}): ReactNode {
  const listed = inputs.map((input) => inputWords(input, view, units)).filter((words) => words !== null);
  const shown = listed.slice(0, MOST_INPUTS);
  return (
    <dl className="explanation-inputs">
      {shown.map(({ name, label, value }) => (
        <div key={name}>
          <dt>{label}</dt>
          <dd>{value}</dd>
        </div>
      ))}
      {listed.length > shown.length && (
        <div>
          <dt>and {listed.length - shown.length} more of the same kind</dt>
        </div>
      )}
    </dl>
  );
}

interface InputWords {
  readonly name: string;
  readonly label: string;
  readonly value: string;
}

/** What goes in and its present value; `null` where this door does not have it. */
function inputWords(input: ResultInput, view: DoorView, units: UnitSystem): InputWords | null {
  if ("result" in input) {
    const definition = resultNamed(input.result);
    const value = view.results[input.result]?.value ?? null;
    if (definition === undefined) return null;
    return { name: input.result, label: definition.title, value: figureText(value, definition.unit, units) };
  }
  const path = input.key.startsWith("animals.")
    ? input.key.replace("animals.", `animals.${view.geometry.animal}.`)
    : input.key;
  const value = valueWords(path, view, units);
  return value === null ? null : { name: input.key, label: labelInSentence(path), value };
}

function valueWords(path: string, view: DoorView, units: UnitSystem): string | null {
  const number = getValue(view.door, path);
  const field = fieldAt(path);
  if (number !== null) return keyText(number, field?.kind === "quantity" ? field.dimension : null, units);
  const [section, key] = path.split(".");
  const part = (view.door as unknown as Record<string, unknown>)[section];
  const raw = typeof part === "object" && part !== null ? (part as Record<string, unknown>)[key] : undefined;
  if (Array.isArray(raw)) return raw.length === 0 ? null : `${raw.length} entries`;
  if (typeof raw === "boolean") return raw ? "yes" : "no";
  return typeof raw === "string" ? raw : null;
}

const RANK = { fail: 2, caution: 1, ok: 0 } as const;

/** The worst finding that rests on a figure. */
function worstAbout(findings: readonly Finding[], name: string): Finding | null {
  const about = findings.filter(({ results }) => results.includes(name));
  return about.reduce<Finding | null>(
    (worst, finding) => (worst === null || RANK[finding.status] > RANK[worst.status] ? finding : worst),
    null,
  );
}
