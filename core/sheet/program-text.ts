/** The timer program's text: C99 that is C++11 too, for any board with an Arduino-compatible core. */
/** Names of the board's connections, on the wiring diagram and in the program. */
export const PINS = { detect: "DETECT", coil: "COIL", lamp: "LAMP" } as const;

export interface ProgramNumbers {
  readonly holdMs: number;
  readonly pulseMs: number;
  readonly debounceMs: number;
  readonly maxOnS: number;
  readonly restS: number;
  readonly retriggers: boolean;
}

/** Words that stand in the program's head, without line breaks; made safe for a comment here. */
export interface ProgramWords {
  readonly name: string;
  /** How the hold was chosen, and what the passage looks like. */
  readonly hold: readonly string[];
  readonly limit: readonly string[];
}

/** A line that neither ends its comment, nor opens one, nor runs on. */
export function commentSafe(words: string): string {
  return words
    .replace(/\p{Cc}+/gu, " ")
    .replace(/[*\\]/g, " ")
    .replace(/\?(?=\?)/g, " ")
    .trim();
}

const block = (lines: readonly string[]) => lines.map((one) => ` * ${commentSafe(one)}`.trimEnd()).join("\n");

export function programText(numbers: ProgramNumbers, words: ProgramWords): string {
  return `${head(words)}
${settings(numbers, words)}
${DETECTOR}
${hold(numbers.retriggers)}
${BOARD}`;
}

function head(words: ProgramWords): string {
  return `/*
 * Pet door timer: ${commentSafe(words.name)}
 *
 * Holds the bolt back after a detection pulse, so that the flap comes to rest
 * before the door locks again.
 *
 * Boards: any with an Arduino-compatible core. It uses pinMode, digitalRead,
 * digitalWrite and millis only, and no memory beyond a few variables.
 * Save it as a sketch (.ino), or as a C file beside an empty sketch.
 *
 * Connections: ${PINS.detect} from the receiver, ${PINS.coil} to the driver's base or gate,
 * ${PINS.lamp} to the indicator (lit: unlocked; blinking: the coil rests).
 * While the board starts up its pins float: the driver needs its pull-down.
 *
 * Low voltage from a listed adapter only, never mains inside the door. The flap
 * must stay pushable by hand from inside. Local codes come before this program.
 */
#include <Arduino.h>
#include <stdbool.h>
#include <stdint.h>
`;
}

function settings(numbers: ProgramNumbers, words: ProgramWords): string {
  const { holdMs, pulseMs, debounceMs, maxOnS, restS } = numbers;
  return `/* ---- Your board: change these to your connections ---- */

#define ${PINS.detect}_PIN 2
#define ${PINS.coil}_PIN 9
#define ${PINS.lamp}_PIN 13
/* The level of a detection pulse: HIGH, or LOW for an output that pulls down
 * (then make the mode INPUT_PULLUP). */
#define ${PINS.detect}_ACTIVE HIGH
#define ${PINS.detect}_MODE INPUT

/* ---- From the door ---- */

/*
${block(words.hold)}
 */
#define HOLD_MS ${holdMs}UL

/* The receiver pulses this often while an animal is in range. An output that
 * stays on instead counts as a pulse this often. */
#define PULSE_MS ${pulseMs}UL

/* A pulse must last this long to count, which keeps out contact bounce and
 * spikes. Hold and unlocking both start this much later. */
#define DEBOUNCE_MS ${debounceMs}UL

/*
${block(words.limit)}
 */
#define MAX_ON_S ${maxOnS}UL
#define REST_S ${restS}UL
`;
}

const DETECTOR = `/* ---- Detection ---- */

struct detector {
    uint32_t since;   /* when the input last changed, ms */
    uint32_t counted; /* when the last pulse was counted, ms */
    bool raw;         /* the input as it was last read */
    bool active;      /* the same without bounce */
};

/* True once for every pulse. Differences of times stay right when the clock
 * rolls over after 49 days. */
static bool detector_step(struct detector *d, bool raw, uint32_t now)
{
    if (raw != d->raw) {
        d->raw = raw;
        d->since = now;
    }
    if (raw != d->active) {
        if ((uint32_t)(now - d->since) < DEBOUNCE_MS) {
            return false;
        }
        d->active = raw;
        d->counted = now;
        return raw;
    }
    if (d->active && (uint32_t)(now - d->counted) >= PULSE_MS) {
        d->counted += PULSE_MS;
        return true;
    }
    return false;
}
`;

function hold(retriggers: boolean): string {
  const rule = retriggers
    ? `    if (pulse && !h->resting) { /* every pulse starts the hold anew */`
    : `    if (pulse && !h->resting && !h->unlocked) { /* one trigger: pulses during the hold do not count */`;
  return `/* ---- The hold, and the coil's time on ---- */

struct hold {
    uint32_t last;    /* when it was last looked at, ms */
    uint32_t from;    /* when the running hold began, ms */
    uint32_t used;    /* time on that no rest has paid back yet, ms */
    uint32_t off;     /* time off that has not paid anything back yet, ms */
    bool unlocked;
    bool resting;
};

/* Time on is added up. REST_S off pay back MAX_ON_S on, shorter times their share. */
static void hold_account(struct hold *h, uint32_t elapsed)
{
    uint32_t paid;

    if (h->unlocked) {
        h->used += elapsed;
        return;
    }
    h->off += elapsed;
    paid = h->off / REST_S * MAX_ON_S;
    h->off %= REST_S;
    h->used = paid < h->used ? h->used - paid : 0;
}

static void hold_step(struct hold *h, bool pulse, uint32_t now)
{
    hold_account(h, (uint32_t)(now - h->last));
    h->last = now;
    if (h->used >= MAX_ON_S * 1000UL) {
        h->resting = true;
        h->unlocked = false;
    } else if (h->used == 0) {
        h->resting = false;
    }
    if (h->unlocked && (uint32_t)(now - h->from) >= HOLD_MS) {
        h->unlocked = false;
    }
${rule}
        h->unlocked = true;
        h->from = now;
    }
}
`;
}

const BOARD = `/* ---- The board ---- */

static struct detector detector;
static struct hold hold;

void setup(void)
{
    digitalWrite(${PINS.coil}_PIN, LOW); /* locked before the pin drives anything */
    pinMode(${PINS.coil}_PIN, OUTPUT);
    pinMode(${PINS.lamp}_PIN, OUTPUT);
    pinMode(${PINS.detect}_PIN, ${PINS.detect}_MODE);
    hold.last = (uint32_t)millis();
}

void loop(void)
{
    const uint32_t now = (uint32_t)millis();
    const bool raw = digitalRead(${PINS.detect}_PIN) == ${PINS.detect}_ACTIVE;
    const bool blink = hold.resting && (now / 250U) % 2U == 0U;

    hold_step(&hold, detector_step(&detector, raw, now), now);
    digitalWrite(${PINS.coil}_PIN, hold.unlocked ? HIGH : LOW);
    digitalWrite(${PINS.lamp}_PIN, hold.unlocked || blink ? HIGH : LOW);
}
`;
