/** The film's controls. The running time is written straight into its element: no render per frame. */
import { type ReactNode, useEffect, useRef, useSyncExternalStore } from "react";
import { Button, ToggleButton } from "react-aria-components";
import { RATES, type Rate } from "../state/playhead.ts";
import { Icon } from "../ui/icons.tsx";
import { usePage, useWorkbench } from "./workbench.ts";

const RATE_WORDS: Readonly<Record<string, string>> = {
  "1": "full speed",
  "0.5": "half",
  "0.2": "1/5",
  "0.1": "1/10",
  "0.05": "1/20",
};

export function Transport(): ReactNode {
  const { playhead, commands } = useWorkbench();
  const { playing, rate, loop } = useSyncExternalStore(playhead.subscribeSettings, () => playhead.settings);
  const pinned = usePage((state) => state.pinned !== null);
  const there = usePage((state) => state.view !== null);
  return (
    <div className="transport" role="toolbar" aria-label="Replay">
      <Button className="button button-icon" aria-label="One frame back" onPress={() => playhead.step(-1)}>
        <Icon name="back" />
      </Button>
      <Button
        className="button button-icon button-main"
        aria-label={playing ? "Pause" : "Play"}
        onPress={() => commands.run("play-pause")}
      >
        <Icon name={playing ? "pause" : "play"} />
      </Button>
      <Button className="button button-icon" aria-label="One frame on" onPress={() => playhead.step(1)}>
        <Icon name="on" />
      </Button>
      <Clock />
      <label className="rate">
        <span className="unseen">Speed of the replay</span>
        <select
          className="entry-input"
          value={rate}
          onChange={({ target }) => playhead.setRate(Number(target.value) as Rate)}
        >
          {RATES.map((one) => (
            <option key={one} value={one}>
              {RATE_WORDS[one]}
            </option>
          ))}
        </select>
      </label>
      <ToggleButton
        className="toggle"
        isSelected={loop}
        onChange={playhead.setLoop}
        aria-label="Loop: play over and over"
      >
        <Icon name="loop" /> <span className="roomy">Loop</span>
      </ToggleButton>
      <span className="transport-gap" />
      {pinned && (
        <Button className="button" onPress={() => commands.run("unpin")}>
          Put the copy away
        </Button>
      )}
      <Button className="button" isDisabled={!there} onPress={() => commands.run("pin")}>
        <Icon name="pin" /> {pinned ? "Pin this instead" : "Pin a copy"}
      </Button>
    </div>
  );
}

/** "3.20 s after let-go", or before it. */
function Clock(): ReactNode {
  const { playhead } = useWorkbench();
  const letGo = usePage((state) => state.view?.replay.marks.letGo ?? 0);
  const element = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    const write = (): void => {
      const since = playhead.time - letGo;
      const text = `${Math.abs(since).toFixed(2)} s ${since < 0 ? "to let-go" : "after let-go"}`;
      if (element.current !== null && element.current.textContent !== text)
        element.current.textContent = text;
    };
    write();
    return playhead.subscribe(write);
  }, [playhead, letGo]);
  return <span ref={element} className="clock" />;
}
