/* As much of an Arduino-compatible core as the timer program uses, for a run on the host with a clock of our own. */
#ifndef ARDUINO_H
#define ARDUINO_H

#include <stdint.h>

#define LOW 0
#define HIGH 1
#define INPUT 0
#define OUTPUT 1
#define INPUT_PULLUP 2

#ifdef __cplusplus
extern "C" {
#endif

void pinMode(uint8_t pin, uint8_t mode);
int digitalRead(uint8_t pin);
void digitalWrite(uint8_t pin, uint8_t level);
unsigned long millis(void);
void setup(void);
void loop(void);

#ifdef __cplusplus
}
#endif

#endif
