/*
 * One swing by the explicit Runge-Kutta method of Dormand and Prince, order 5(4), with its dense output of order 4 (Hairer,
 * Norsett and Wanner, Solving Ordinary Differential Equations I, 2nd ed., II.5 and II.6, program DOPRI5). Region by region,
 * events located on the dense output: cuts, turning points, edges of the capture band. Equation, table and rules are those of
 * tests/bench/peer-swing.ts; calm air.
 *
 * Reads the system from stdin as numbers: inertia, weight moment, plumb, still-air drag, static ratio, stop, restitution, capture
 * centre and half; cuts, then damping and friction per region; table: fine and coarse width and cells, coefficients;
 * release angle; tolerance; seconds to measure. Prints settle time (s) and the best time per swing (ns).
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static double inertia, weight, plumb, drag, ratio, stop, restitution, centre, half;
static int regions, fine, cells;
static double *cuts, *damping, *friction, fine_width, coarse_width, *table;

static double number(void) {
  double value;
  if (scanf("%lf", &value) != 1) exit(2);
  return value;
}

static double *numbers(int count) {
  double *values = malloc(sizeof(double) * (count > 0 ? count : 1));
  for (int i = 0; i < count; i++) values[i] = number();
  return values;
}

static double magnets(double angle) {
  double size = fabs(angle), place = size / fine_width;
  if (place >= fine) place = fine + (size - fine_width * fine) / coarse_width;
  if (!(place < cells)) return 0;
  int cell = (int)place;
  const double *c = table + 6 * cell, u = place - cell;
  double torque = c[0] + u * (c[1] + u * (c[2] + u * (c[3] + u * (c[4] + u * c[5]))));
  return angle < 0 ? -torque : torque;
}

static double at_rest(double angle) {
  return (cells > 0 ? magnets(angle) : 0) - weight * sin(angle - plumb);
}

static int region_of(double angle, double sign) {
  int region = 0;
  if (sign > 0)
    while (region < regions - 1 && cuts[region + 1] <= angle) region++;
  else
    while (region < regions - 1 && cuts[region + 1] < angle) region++;
  return region;
}

static int sticks(double angle) {
  double held = fmax(friction[region_of(angle, -1)], friction[region_of(angle, 1)]);
  return fabs(at_rest(angle)) <= ratio * held;
}

typedef struct {
  double c, f;
} Forces;

static double acceleration(Forces of, double angle, double speed) {
  return (at_rest(angle) - drag * fabs(speed) * speed - of.c * speed + of.f) / inertia;
}

/* A step's dense output: five coefficients for the angle and for the speed (DOPRI5's CONT). */
typedef struct {
  double from, h, angle[5], speed[5];
} Step;

static double dense(const double *c, double s) {
  return c[0] + s * (c[1] + (1 - s) * (c[2] + s * (c[3] + (1 - s) * c[4])));
}

/* Share of a step at which a component passes a value that its ends lie on both sides of: Illinois rule. */
static double share_at(const double *c, double value, double low, double high, double h) {
  double f_low = dense(c, low) - value, f_high = dense(c, high) - value;
  for (int i = 0; i < 80 && fabs(high - low) * h > 1e-10; i++) {
    double guess = (low * f_high - high * f_low) / (f_high - f_low);
    if (!(guess > fmin(low, high) && guess < fmax(low, high))) guess = (low + high) / 2;
    double f = dense(c, guess) - value;
    if (f * f_high < 0) {
      low = high;
      f_low = f_high;
    } else
      f_low /= 2;
    high = guess;
    f_high = f;
    if (f == 0) break;
  }
  return high;
}

/* One step of size h; k1 is the slope at the start, and becomes that at the end. Returns the error over the tolerance. */
static double step(Forces of, double a, double w, double h, double *k1, Step *out, double tolerance) {
  double p1 = w, q1 = *k1;
  double p2 = w + h * (1. / 5 * q1);
  double q2 = acceleration(of, a + h * (1. / 5 * p1), p2);
  double p3 = w + h * (3. / 40 * q1 + 9. / 40 * q2);
  double q3 = acceleration(of, a + h * (3. / 40 * p1 + 9. / 40 * p2), p3);
  double p4 = w + h * (44. / 45 * q1 - 56. / 15 * q2 + 32. / 9 * q3);
  double q4 = acceleration(of, a + h * (44. / 45 * p1 - 56. / 15 * p2 + 32. / 9 * p3), p4);
  double p5 = w + h * (19372. / 6561 * q1 - 25360. / 2187 * q2 + 64448. / 6561 * q3 - 212. / 729 * q4);
  double q5 = acceleration(
      of, a + h * (19372. / 6561 * p1 - 25360. / 2187 * p2 + 64448. / 6561 * p3 - 212. / 729 * p4), p5);
  double p6 = w + h * (9017. / 3168 * q1 - 355. / 33 * q2 + 46732. / 5247 * q3 + 49. / 176 * q4 -
                       5103. / 18656 * q5);
  double q6 = acceleration(of,
                           a + h * (9017. / 3168 * p1 - 355. / 33 * p2 + 46732. / 5247 * p3 + 49. / 176 * p4 -
                                    5103. / 18656 * p5),
                           p6);
  double da = h * (35. / 384 * p1 + 500. / 1113 * p3 + 125. / 192 * p4 - 2187. / 6784 * p5 + 11. / 84 * p6);
  double dw = h * (35. / 384 * q1 + 500. / 1113 * q3 + 125. / 192 * q4 - 2187. / 6784 * q5 + 11. / 84 * q6);
  double p7 = w + dw, q7 = acceleration(of, a + da, p7);
  double ea = h * (71. / 57600 * p1 - 71. / 16695 * p3 + 71. / 1920 * p4 - 17253. / 339200 * p5 +
                   22. / 525 * p6 - 1. / 40 * p7);
  double ew = h * (71. / 57600 * q1 - 71. / 16695 * q3 + 71. / 1920 * q4 - 17253. / 339200 * q5 +
                   22. / 525 * q6 - 1. / 40 * q7);
  double d[5] = {a, da, h * p1 - da, da - h * p7 - (h * p1 - da), 0};
  double e[5] = {w, dw, h * q1 - dw, dw - h * q7 - (h * q1 - dw), 0};
  d[4] = h * (-12715105075. / 11282082432 * p1 + 87487479700. / 32700410799 * p3 -
              10690763975. / 1880347072 * p4 + 701980252875. / 199316789632 * p5 -
              1453857185. / 822651844 * p6 + 69997945. / 29380423 * p7);
  e[4] = h * (-12715105075. / 11282082432 * q1 + 87487479700. / 32700410799 * q3 -
              10690763975. / 1880347072 * q4 + 701980252875. / 199316789632 * q5 -
              1453857185. / 822651844 * q6 + 69997945. / 29380423 * q7);
  for (int i = 0; i < 5; i++) {
    out->angle[i] = d[i];
    out->speed[i] = e[i];
  }
  out->h = h;
  ea /= tolerance * (1 + fmax(fabs(a), fabs(a + da)));
  ew /= tolerance * (1 + fmax(fabs(w), fabs(w + dw)));
  double error = sqrt((ea * ea + ew * ew) / 2);
  if (error <= 1) *k1 = q7;
  return error;
}

static double settle_time(double release, double tolerance) {
  double time = 0, angle = release, speed = 0, entered = -1, h = 1e-3;
  double low = centre - half, high = centre + half;
  for (int pieces = 0; pieces < 20000 && time < 600; pieces++) {
    if (speed == 0 && sticks(angle)) break;
    double sign = (speed == 0 ? at_rest(angle) : speed) > 0 ? 1 : -1;
    int region = region_of(angle, sign);
    double target = cuts[sign > 0 ? region + 1 : region];
    Forces of = {damping[region], -sign * friction[region]};
    double k1 = acceleration(of, angle, speed);
    for (int done = 0; !done;) {
      Step s;
      double error = step(of, angle, speed, h, &k1, &s, tolerance);
      double next = h * fmax(0.2, fmin(10, 0.9 * pow(fmax(error, 1e-10), -0.2)));
      if (!(error <= 1)) {
        h = next;
        continue;
      }
      double end = 1, to_angle = dense(s.angle, 1), to_speed = dense(s.speed, 1);
      if (to_speed * sign <= 0) {
        end = share_at(s.speed, 0, 1e-9, 1, h);
        to_angle = dense(s.angle, end);
        to_speed = 0;
        done = 1;
      }
      if ((to_angle - target) * sign >= 0) {
        end = share_at(s.angle, target, 1e-9, end, h);
        to_angle = target;
        to_speed = dense(s.speed, end);
        done = 1;
      }
      double edge = angle < low && to_angle >= low ? low : angle > high && to_angle <= high ? high : NAN;
      if (edge == edge) entered = time + h * share_at(s.angle, edge, 0, end, h);
      time += h * end;
      angle = to_angle;
      speed = to_speed;
      h = next;
    }
    if (fabs(angle) >= stop) speed *= -restitution;
  }
  return angle >= low && angle <= high ? entered : -1;
}

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return t.tv_sec + 1e-9 * t.tv_nsec;
}

int main(void) {
  inertia = number(), weight = number(), plumb = number(), drag = number(), ratio = number();
  stop = number(), restitution = number(), centre = number(), half = number();
  regions = (int)number();
  cuts = numbers(regions + 1), damping = numbers(regions), friction = numbers(regions);
  fine_width = number(), fine = (int)number(), coarse_width = number(), cells = fine + (int)number();
  table = numbers(6 * cells);
  double release = number(), tolerance = number(), budget = number();
  double settled = settle_time(release, tolerance), best = INFINITY, end = now() + budget;
  while (now() < end) {
    double start = now();
    for (int i = 0; i < 20; i++) settled = settle_time(release, tolerance);
    best = fmin(best, (now() - start) / 20);
  }
  printf("%.12g %.6g\n", settled, best * 1e9);
  return 0;
}
