// The strip and the plots by themselves on a page, on real doors computed in the page: to look at and to try by browser.
// ?door=01-plain &theme=dark &show=strip|plots &study &pin &hold=12.5 &height=190
import "@fontsource-variable/figtree";
import { useState } from "react";
import { createRoot } from "react-dom/client";
import Drivers from "../../../../renderer/plots/Drivers.tsx";
import MapPicture from "../../../../renderer/plots/MapPicture.tsx";
import Plots from "../../../../renderer/plots/Plots.tsx";
import { drivePlayhead } from "../../../../renderer/state/drive.ts";
import { createPlayhead } from "../../../../renderer/state/playhead.ts";
import type { DoorView, StudyView, Theme } from "../../../../renderer/state/view.ts";
import { outcomeAt } from "../../../../renderer/strip/outcomes.ts";
import PassageStrip from "../../../../renderer/strip/PassageStrip.tsx";
import { type Prepared, prepare, viewAt } from "../../../../renderer/worker/compute-view.ts";
import "../../../../renderer/theme/tokens.css";
import "./bench.css";

const doors = import.meta.glob<string>("../../../reference/model/doors/*.door.json", {
  query: "?raw",
  import: "default",
  eager: true,
});
const query = new URLSearchParams(location.search);
const theme = (query.get("theme") ?? "light") as Theme;
document.documentElement.dataset.theme = theme;

const playhead = createPlayhead();
drivePlayhead(playhead, window);
const calls: string[] = [];
Object.assign(window, { playhead, calls });

let serial = 0;
function prepared(name: string, change: (text: string) => string = (text) => text): Prepared {
  const preparation = prepare(change(doors[`../../../reference/model/doors/${name}.door.json`]), "metric");
  if (!preparation.ok) throw new Error(preparation.faults.map(({ message }) => message).join("\n"));
  return preparation.prepared;
}

/** Not a study: the nominal outcomes blurred by a normal spread of the hold, so that there is a curve to draw. */
function blurred(view: DoorView): StudyView {
  const end = view.outcomes[view.outcomes.length - 1]?.to ?? 10;
  const chance = (hold: number): number => {
    let sum = 0;
    for (let i = 0; i < 4000; i++) {
      const at = hold * (1 + Number(query.get("spread") ?? 0.12) * normal((i + 0.5) / 4000));
      if (outcomeAt(view.outcomes, Math.max(0, at)) === "caught") sum++;
    }
    return sum / 4000;
  };
  const curve = Array.from({ length: Math.ceil(end / 0.05) }, (_, i) => {
    const p = chance(i * 0.05);
    return [i * 0.05, p, Math.max(0, p - 1.5 * Math.sqrt((p * (1 - p)) / 4000) - 0.0004)] as const;
  });
  const recommended = curve.find(([, , l], i) => l >= 0.999 && curve.slice(i).every(([, , m]) => m >= 0.999));
  return {
    text: view.text,
    samples: 4000,
    seed: 1,
    recommended: recommended?.[0] ?? null,
    probability: recommended?.[1] ?? null,
    lowerBound: recommended?.[2] ?? null,
    curve,
    settle: { "5": null, "50": null, "95": null, "99": null },
    settleError: { "5": null, "50": null, "95": null, "99": null },
    causes: { "cannot work": 0, "rests outside": 0, "under the animal": 0, stuck: 0, "shut out": 0 },
    causesAt: 0,
    whyNone: null,
    door: view.door.name,
    reliability: 0.999,
    confidence: 0.95,
    samplesNeeded: 2995,
    settingStep: 0.01,
    settleStep: 0.01,
    settleFrom: "",
    drivers: [],
    holdDrivers: [],
    animals: [],
    worst: null,
    inputs: [],
    notes: [],
  };
}

/** Inverse of the normal distribution by its logistic neighbour: good enough for a picture. */
function normal(p: number): number {
  return Math.log(p / (1 - p)) / 1.702;
}

const source = prepared(query.get("door") ?? "01-plain");
const start = viewAt(source, query.has("hold") ? Number(query.get("hold")) : null, ++serial);
const pinned = query.has("pin") ? viewAt(prepared(query.get("pin") || "15-damper"), null, ++serial) : null;
const study = query.has("study") ? blurred(start) : null;
playhead.setRange(0, start.replay.time[start.replay.time.length - 1]);
playhead.seek(Number(query.get("at") ?? 5.2));

/** A made-up surface with a corner where it does not exist, the same along one row, and made-up drivers. */
function Maps() {
  const gaps = Array.from({ length: 13 }, (_, i) => 2 + i * 0.5);
  const frictions = Array.from({ length: 11 }, (_, i) => 1 + i);
  const surface = frictions.flatMap((f) =>
    gaps.map((g) => (g < 3.2 && f > 7 ? null : 4 + 12 / f + Math.sin(g) + 0.3 * g)),
  );
  const x = { key: "magnets.gap", label: "gap of the magnets", unit: "mm", values: gaps };
  const y = { key: "hinge.frictionTorque", label: "friction of the hinge", unit: "mN m", values: frictions };
  const of = { name: "swing.settleTime", title: "Settle time", unit: "s" };
  const adopt = (a: number, b: number | null) => calls.push(`adopt ${a} ${b}`);
  const driver = (key: string, value: number, error: number) => {
    return { key, value, error, measure: "squared rank correlation" };
  };
  const drivers = [
    driver("hinge.frictionTorque", 0.41, 0.02),
    driver("air.swingFactor", 0.22, 0.02),
    driver("release.angle", 0.08, 0.015),
    driver("magnets.gap", 0.02, 0.012),
    driver("latch.offset", 0.004, 0.01),
  ];
  return (
    <main className="maps">
      <MapPicture {...{ x, y, of }} values={surface} here={{ x: 4.2, y: 6 }} onAdopt={adopt} />
      <MapPicture {...{ x, of }} values={surface.slice(9 * 13, 10 * 13)} here={{ x: 4.2 }} onAdopt={adopt} />
      <Drivers drivers={drivers} onChoose={(key) => calls.push(`choose ${key}`)} />
    </main>
  );
}

function Bench() {
  const [view, setView] = useState(start);
  const show = (hold: number | null) => setView(viewAt(source, hold, ++serial));
  const said = (text: string) => calls.push(text);
  if (query.get("show") === "maps") return <Maps />;
  if (query.get("show") === "plots") {
    const units = query.get("units") === "inch" ? "inch" : "metric";
    return (
      <main style={{ height: `${query.get("height") ?? 500}px` }}>
        <Plots {...{ view, pinned, playhead, theme, units }} />
      </main>
    );
  }
  return (
    <main style={{ height: `${query.get("height") ?? 190}px` }} data-outcome-of-core={view.relatch?.outcome}>
      <PassageStrip
        {...{ view, pinned, playhead, theme, study }}
        onHoldPreview={(hold) => {
          said(`preview ${hold}`);
          show(hold);
        }}
        onHoldCommit={(hold) => {
          said(`commit ${hold}`);
          show(hold);
        }}
        onHoldCancel={() => {
          said("cancel");
          show(null);
        }}
        isSettled={() => true}
      />
    </main>
  );
}

const place = document.getElementById("root");
if (place !== null) createRoot(place).render(<Bench />);
