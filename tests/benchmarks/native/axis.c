/*
 * The axis in C, as the yardstick of pace: plant, current loop and position loop of workers/MODEL.md by the classical Runge-Kutta rule in
 * two steps a period. Without heat, trips, limits of the current and telemetry, which the model has besides. Reads struct axis and the
 * setpoints of every position-loop sample as doubles from the file named; prints seconds taken, and where table and motor ended, m.
 * As a library (stiff.py) it leaves the integration to another solver.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define MOTORS 8
#define WAVES 8
#define X1 0
#define V1 1
#define X2 2
#define V2 3
#define Z 4
#define ENERGIES 5
#define CURRENTS 12
#define STATES (CURRENTS + 2 * MOTORS + 2)
#define STEPS 2

struct wave {
  double amplitude, rate, phase;
};

struct filter {
  double b0, b1, b2, a1, a2;
};

/* All doubles, in the order of nativeAxis.ts. */
struct axis {
  double ticks, period, divider, motors, start;
  double m1, m1t, m2, stiffness_base, damping_base, mass_base, travelling, base;
  double per_pitch, inductance, resistance, flux, saturation, open;
  double iron_dry, iron_viscous, nut_dry, nut_viscous, reversal;
  double link_compliance, link_damping, half_gap, per_rigidity, span;
  double coulomb, excess, per_stribeck, sigma0, sigma1, per_fade, sigma2, per_cap;
  double weight1, weight2, counterbalance, stop_low, stop_high;
  double loop_inductance, kp, ki, flux_cold, voltage_limit;
  double Kp, Ki, Kd, speed_filter, speed_feedforward, acceleration_feedforward, bias, per_force, current_limit;
  double count, noise, seed, at_motor;
  double cosine[MOTORS], sine[MOTORS];
  struct wave ripple[WAVES], cogging[WAVES], encoder[WAVES];
  struct filter filters[4];
};

struct setpoint {
  double position, speed, acceleration, force;
};

static struct axis p;
static double voltage_d, voltage_q;

static double waves(const struct wave *wave, double x, double (*of)(double)) {
  double sum = 0;
  for (int k = 0; k < WAVES && wave[k].amplitude != 0; k++)
    sum += wave[k].amplitude * of(wave[k].rate * x + wave[k].phase);
  return sum;
}

void derivative(const double *y, double *d) {
  const int motors = (int)p.motors;
  const double x1 = y[X1], v1 = y[V1], x2 = y[X2], v2 = y[V2];
  double f1 = 0, f2 = 0, outside = 0, other = 0;
  double copper = 0, supplied = 0, iron = 0, nut = 0;
  double *di = d + CURRENTS;
  const double *i = y + CURRENTS;
  if (p.open) {
    for (int k = 0; k < 2 * motors; k++) di[k] = 0;
  } else {
    const double ripple = 1 + waves(p.ripple, x1, cos);
    const double omega_l = p.per_pitch * v1 * p.inductance;
    for (int k = 0; k < motors; k++) {
      const double id = i[2 * k], iq = i[2 * k + 1];
      const double thrust = p.per_pitch * p.flux * ripple / sqrt(1 + iq * iq * p.saturation);
      di[2 * k] = (voltage_d - p.resistance * id + omega_l * iq + thrust * p.sine[k] * v1) / p.inductance;
      di[2 * k + 1] =
          (voltage_q - p.resistance * iq - omega_l * id - thrust * p.cosine[k] * v1) / p.inductance;
      f1 += 1.5 * thrust * (iq * p.cosine[k] - id * p.sine[k]);
      copper += 1.5 * p.resistance * (id * id + iq * iq);
      supplied += 1.5 * (voltage_d * id + voltage_q * iq);
    }
  }
  if (p.cogging[0].amplitude != 0) f1 -= waves(p.cogging, x1, sin);
  if (p.iron_dry > 0 || p.iron_viscous > 0) {
    const double force = p.iron_viscous * v1 + p.iron_dry * tanh(v1 / p.reversal);
    f1 -= force;
    iron += force * v1;
  }
  if (p.nut_dry > 0 || p.nut_viscous > 0) {
    const double force = p.nut_dry * tanh(v1 / p.reversal) + p.nut_viscous * v1;
    f1 -= force;
    nut += force * v1;
  }
  double s = x1 - x2;
  s = s > p.half_gap ? s - p.half_gap : s < -p.half_gap ? s + p.half_gap : 0;
  if (!(s == 0 && p.half_gap > 0)) {
    const double k = 1 / (p.link_compliance + fmax(x2 + p.span, 1e-3) * p.per_rigidity);
    const double spring = k * s;
    double force = spring + p.link_damping * (v1 - v2);
    if (p.half_gap > 0 && force * s < 0) force = 0;
    const double slope = x2 + p.span > 1e-3 ? -k * k * p.per_rigidity : 0;
    f1 -= force;
    f2 += force - 0.5 * slope * s * s;
    other += (force - spring) * (v1 - v2);
  }
  double guide = p.sigma2 * v2;
  d[Z] = 0;
  if (p.sigma0 > 0) {
    const double stribeck = v2 * p.per_stribeck;
    const double g = p.coulomb + p.excess * exp(-stribeck * stribeck);
    const double rate = p.sigma0 * fabs(v2) / g;
    const double r = rate * p.per_cap;
    const double c = sqrt(1 + r * r);
    const double slip = (v2 - rate * y[Z]) / c;
    const double fade = v2 * p.per_fade;
    guide += p.sigma0 * (y[Z] + r * p.per_cap / (1 + c) * slip) + p.sigma1 * exp(-fade * fade) * slip;
    d[Z] = slip;
  }
  f2 -= guide;
  f2 += p.counterbalance;
  if (x2 < p.stop_low || x2 > p.stop_high) {
    const double in = x2 > p.stop_high ? x2 - p.stop_high : x2 - p.stop_low;
    const double force = -1e6 * in - 2e3 * v2;
    if (force * in < 0) f2 += force;
  }
  f1 -= p.weight1;
  f2 -= p.weight2;
  double ab = 0;
  if (p.base) {
    const double *b = y + CURRENTS + 2 * motors;
    outside -= p.weight1 + p.weight2 + p.stiffness_base * b[0] + p.damping_base * b[1];
    ab = (outside - p.travelling * f1 - f2) / p.mass_base;
    d[CURRENTS + 2 * motors] = b[1];
    d[CURRENTS + 2 * motors + 1] = ab;
    other += p.damping_base * b[1] * b[1];
  }
  d[X1] = v1;
  d[V1] = (f1 - p.m1t * ab) / p.m1;
  d[X2] = v2;
  d[V2] = f2 / p.m2 - ab;
  d[ENERGIES] = supplied;
  d[ENERGIES + 1] = copper;
  d[ENERGIES + 2] = iron;
  d[ENERGIES + 3] = nut;
  d[ENERGIES + 4] = guide * v2;
  d[ENERGIES + 5] = other;
  d[ENERGIES + 6] = 0;
}

/* Carries y over one period, in place. */
typedef void integrator(double *y, int size);

static void runge_kutta(double *y, int size) {
  static double k1[STATES], k2[STATES], k3[STATES], k4[STATES], at[STATES];
  const double h = p.period / STEPS;
  for (int n = 0; n < STEPS; n++) {
    derivative(y, k1);
    for (int i = 0; i < size; i++) at[i] = y[i] + 0.5 * h * k1[i];
    derivative(at, k2);
    for (int i = 0; i < size; i++) at[i] = y[i] + 0.5 * h * k2[i];
    derivative(at, k3);
    for (int i = 0; i < size; i++) at[i] = y[i] + h * k3[i];
    derivative(at, k4);
    for (int i = 0; i < size; i++) y[i] += h / 6 * (k1[i] + 2 * (k2[i] + k3[i]) + k4[i]);
  }
}

static unsigned state;

static double uniform(void) {
  state += 0x6d2b79f5u;
  unsigned t = state;
  t = (t ^ (t >> 15)) * (t | 1);
  t ^= t + (t ^ (t >> 7)) * (t | 61);
  return (t ^ (t >> 14)) / 4294967296.0;
}

static double normal(void) {
  static double spare;
  static int has;
  if (has) {
    has = 0;
    return spare;
  }
  for (;;) {
    const double a = 2 * uniform() - 1, b = 2 * uniform() - 1, s = a * a + b * b;
    if (s <= 0 || s >= 1) continue;
    const double scale = sqrt(-2 * log(s) / s);
    spare = b * scale;
    has = 1;
    return a * scale;
  }
}

static double reading(double u) {
  const double at = u + waves(p.encoder, u, sin) + p.noise * normal();
  return p.count > 0 ? p.count * floor(at / p.count + 0.5) : at;
}

/* Seconds of the processor that the run took, and where table and motor ended, m. Returns 0, or 2 where the file cannot be read. */
int run(const char *path, integrator *integrate, double *result) {
  FILE *file = fopen(path, "rb");
  if (!file || fread(&p, sizeof p, 1, file) != 1) return 2;
  const long ticks = (long)p.ticks, divider = (long)p.divider, samples = (ticks + divider - 1) / divider;
  struct setpoint *sets = malloc(samples * sizeof *sets);
  if (!sets || fread(sets, sizeof *sets, samples, file) != (size_t)samples) return 2;
  fclose(file);
  const int motors = (int)p.motors, size = CURRENTS + 2 * motors + (p.base ? 2 : 0);
  double y[STATES] = {0}, memory[4][4] = {{0}};
  y[X1] = y[X2] = p.start;
  if (p.base) y[CURRENTS + 2 * motors] = -(p.weight1 + p.weight2) / p.stiffness_base;
  double last = NAN, speed = 0, integral = 0, command = 0, integral_d = 0, integral_q = 0, next_d = 0, next_q = 0;
  state = (unsigned)p.seed;
  struct timespec from, to;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &from);
  for (long tick = 0; tick < ticks; tick++) {
    double id = 0, iq = 0;
    for (int k = 0; k < motors; k++) {
      id += y[CURRENTS + 2 * k];
      iq += y[CURRENTS + 2 * k + 1];
    }
    if (tick % divider == 0) {
      const struct setpoint *set = sets + tick / divider;
      const double tp = p.period * p.divider, x = reading(y[p.at_motor ? X1 : X2]);
      if (isnan(last)) last = x;
      speed += p.speed_filter * ((x - last) / tp - speed);
      last = x;
      if (!p.open) {
        const double error = set->position - x, before = integral;
        integral += p.Ki * tp * error;
        double force = p.Kp * error + integral + p.Kd * (set->speed - speed);
        force += p.speed_feedforward * set->speed + p.acceleration_feedforward * set->acceleration + p.bias;
        for (int k = 0; k < 4; k++) {
          const struct filter *f = p.filters + k;
          double *m = memory[k];
          const double out = f->b0 * force + f->b1 * m[0] + f->b2 * m[1] - f->a1 * m[2] - f->a2 * m[3];
          m[1] = m[0];
          m[0] = force;
          m[3] = m[2];
          m[2] = out;
          force = out;
        }
        const double wanted = (force + set->force) * p.per_force;
        command = fmin(fmax(wanted, -p.current_limit), p.current_limit);
        if (command != wanted && error * wanted > 0) integral = before;
      }
    }
    voltage_d = next_d;
    voltage_q = next_q;
    if (!p.open) {
      const double error = command - iq, step_d = -p.ki * p.period * id, step_q = p.ki * p.period * error;
      const double omega_l = p.per_pitch * speed * p.loop_inductance;
      next_d = -p.kp * id + integral_d + step_d - omega_l * iq;
      next_q = p.kp * error + integral_q + step_q + omega_l * id + p.per_pitch * p.flux_cold * speed;
      const double amplitude = hypot(next_d, next_q);
      if (amplitude > p.voltage_limit) {
        next_d *= p.voltage_limit / amplitude;
        next_q *= p.voltage_limit / amplitude;
      } else {
        integral_d += step_d;
        integral_q += step_q;
      }
    }
    integrate(y, size);
    memset(y + ENERGIES, 0, (CURRENTS - ENERGIES) * sizeof *y);
  }
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &to);
  result[0] = to.tv_sec - from.tv_sec + 1e-9 * (to.tv_nsec - from.tv_nsec);
  result[1] = y[X2];
  result[2] = y[X1];
  return 0;
}

int main(int count, char **arguments) {
  double result[3];
  if (count < 2 || run(arguments[1], runge_kutta, result) != 0) return 2;
  printf("%.9g %.15g %.15g\n", result[0], result[1], result[2]);
  return 0;
}
