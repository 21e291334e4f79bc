/**
 * The moment that the 3D door, the strip and the plots show: one small mutable clock outside React. Views read `time` in
 * their own frame callback or when told of a tick; no React state changes per frame. Times in s from detection.
 */

/** Slow motion: door seconds per second of the clock on the wall. */
export const RATES = [1, 1 / 2, 1 / 5, 1 / 10, 1 / 20] as const;
export type Rate = (typeof RATES)[number];

/** What a toolbar shows; the object is replaced when one of its values changes, and only then. */
export interface PlayheadSettings {
  readonly playing: boolean;
  readonly rate: Rate;
  readonly loop: boolean;
  /** The stretch that is played. */
  readonly from: number;
  readonly to: number;
}

export interface Playhead {
  /** Read freely, write through `seek`. */
  readonly time: number;
  readonly settings: PlayheadSettings;
  play(): void;
  pause(): void;
  toggle(): void;
  /** Goes to a moment, kept within the stretch. */
  seek(time: number): void;
  /** Pauses and goes some frames on or back; a frame is 1/60 s of the wall clock at the current rate. */
  step(frames: number): void;
  setRate(rate: Rate): void;
  setLoop(loop: boolean): void;
  /** The stretch that is played; the moment is kept within it. */
  setRange(from: number, to: number): void;
  /** Lets `wall` seconds pass if playing. Called once per frame by the page's one driver. */
  advance(wall: number): void;
  /** Told of every change of `time` or settings. Returns the unsubscriber. */
  subscribe(listener: () => void): () => void;
  /** Told of changes of `settings` alone, for `useSyncExternalStore`. */
  subscribeSettings(listener: () => void): () => void;
}

const FRAME = 1 / 60;

export function createPlayhead(): Playhead {
  // A number in an object is written over; one in a variable would be a new one every frame.
  const clock = { time: 0 };
  let settings: PlayheadSettings = { playing: false, rate: 1, loop: true, from: 0, to: 0 };
  const ticks = createListeners();
  const changes = createListeners();

  const move = (to: number): void => {
    const kept = Math.min(settings.to, Math.max(settings.from, to));
    if (kept === clock.time) return;
    clock.time = kept;
    ticks.tell();
  };
  const set = (change: Partial<PlayheadSettings>): void => {
    const keys = Object.keys(change) as (keyof PlayheadSettings)[];
    if (keys.every((key) => settings[key] === change[key])) return;
    settings = { ...settings, ...change };
    changes.tell();
    ticks.tell();
  };
  const arrive = (): void => {
    if (settings.loop) move(settings.from);
    else set({ playing: false });
  };
  return {
    get time() {
      return clock.time;
    },
    get settings() {
      return settings;
    },
    play() {
      if (clock.time >= settings.to) move(settings.from);
      set({ playing: true });
    },
    pause: () => set({ playing: false }),
    toggle() {
      if (settings.playing) this.pause();
      else this.play();
    },
    seek: move,
    step(frames) {
      set({ playing: false });
      move(clock.time + frames * FRAME * settings.rate);
    },
    setRate: (rate) => set({ rate }),
    setLoop: (loop) => set({ loop }),
    setRange(from, to) {
      set({ from, to: Math.max(from, to) });
      move(clock.time);
    },
    advance(wall) {
      if (!settings.playing) return;
      if (clock.time >= settings.to) return arrive();
      move(clock.time + wall * settings.rate);
    },
    subscribe: ticks.subscribe,
    subscribeSettings: changes.subscribe,
  };
}

interface Listeners {
  tell(): void;
  subscribe(listener: () => void): () => void;
}

/** A list that is replaced when one comes or goes, so that telling, which happens every frame, takes no memory. */
function createListeners(): Listeners {
  let listeners: readonly (() => void)[] = [];
  return {
    tell() {
      const told = listeners;
      for (let i = 0; i < told.length; i++) told[i]();
    },
    subscribe(listener) {
      listeners = [...listeners, listener];
      return () => {
        listeners = listeners.filter((one) => one !== listener);
      };
    },
  };
}
