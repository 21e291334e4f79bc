/*
 * Runs a timer program against a simulated clock. Standard input: the clock's start, ms, the run's length, ms, the step, ms,
 * then pairs of a time, ms, and the level of the detection input from then on, rising. Standard output: every change of a
 * pin's level and mode, as `what time pin value`.
 */
#include <Arduino.h>
#include <stdio.h>

#define DETECT 2
#define PINS 32

static uint32_t clock_start;
static uint32_t elapsed;
static int input_level;
static int levels[PINS];
static int modes[PINS];

void pinMode(uint8_t pin, uint8_t mode)
{
    modes[pin] = mode;
    printf("mode %lu %d %d\n", (unsigned long)elapsed, pin, mode);
}

void digitalWrite(uint8_t pin, uint8_t level)
{
    if (levels[pin] == level + 1) {
        return;
    }
    levels[pin] = level + 1;
    printf("level %lu %d %d\n", (unsigned long)elapsed, pin, level);
}

int digitalRead(uint8_t pin)
{
    return pin == DETECT ? input_level : LOW;
}

unsigned long millis(void)
{
    return (uint32_t)(clock_start + elapsed);
}

int main(void)
{
    unsigned long start, length, step, time;
    int level;
    int more;

    if (scanf("%lu %lu %lu", &start, &length, &step) != 3 || step == 0) {
        return 2;
    }
    clock_start = (uint32_t)start;
    more = scanf("%lu %d", &time, &level) == 2;
    setup();
    for (elapsed = 0; elapsed <= length; elapsed += step) {
        while (more && time <= elapsed) {
            input_level = level;
            more = scanf("%lu %d", &time, &level) == 2;
        }
        loop();
    }
    return 0;
}
