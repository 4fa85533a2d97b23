/* Time steps of many actuation slots: the equations of stepping.py, LANES rows side by side in one vector.

   Plain C with the vector types of gcc and clang; it calls nothing, not even the mathematics library, and contracts no
   products into sums, so that every processor computes the same bits. */

#include <stdint.h>
#include <string.h>

#define LANES 4
#define MOST_INJECTORS 16
#define MOST_PORTS (2 * MOST_INJECTORS)
#define MOST_OUTPUTS 16
#define STEEP_OHM 1.0
#define CHORD_WIDTHS 8.0
#define TANH_1 0.76159415595576488812

typedef double lanes __attribute__((vector_size(LANES * 8)));
typedef int64_t flags __attribute__((vector_size(LANES * 8)));

#define INLINE static inline __attribute__((always_inline))
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && defined(__GLIBC__)
#define FOR_EACH_PROCESSOR __attribute__((target_clones("arch=x86-64-v3", "default")))
#else
#define FOR_EACH_PROCESSOR
#endif

/* Must match MAGNETS in compiled_step.py. */
enum {
    TURNS, TURNS_SQUARED, GAP_SCALE, MOTION_SCALE, FULL_GAP_M, LEAKAGE_H, IRON_PER_H, SATURATION_WB, MASS_KG, SPRING,
    PRELOAD_N, VISCOUS, HALF_LIFT_M, STOP, STOP_DAMPING, STOP_WIDTH_M, MAGNETS
};

/* One phase. Arrays are C-contiguous; a row's state is (row, injector), a record (step, column, injector or output).
   Must match Phase in compiled_step.py. */
typedef struct {
    int64_t rows, injectors, outputs, columns;
    int64_t first, last;  /* steps to take, and the one to end before */
    int64_t check;        /* between pulses: steps between two looks whether a row is at rest; 0 during a pulse */
    int64_t doublings, parts;
    double step_s, choke_h, trip_a, trip_width_a, trip_at_s, rest_a, rest_change_a, rest_speed_m_s;
    const double *shared, *from_rail, *constant;                     /* (row, port + output, port), (row, port + output) */
    const double *law_ohm, *law_offset_v, *law_swing_v, *law_centre_a, *law_width_a;
    const double *magnets;                                           /* (MAGNETS, row, injector) */
    const double *supply_v, *source_ohm, *reservoir_f;               /* (row,) */
    const double *live;                                              /* (row, output): 1 where a feed is on */
    const int64_t *column;                                           /* (row,): where the row stands in the records */
    double *linkage, *position, *speed, *driver, *rail, *over;       /* the state, read and written */
    int64_t *ended;                                                  /* (row,): the step a row tripped or rested before, or -1 */
    double *coil_a, *return_a, *linkage_wb, *position_m, *acceleration_m_s2, *force_n, *feed_a, *rail_v;
} Phase;

INLINE lanes all(double value) { return (lanes){} + value; }
INLINE lanes choose(flags where, lanes yes, lanes no) { return (lanes)(((flags)yes & where) | ((flags)no & ~where)); }
INLINE lanes size_of(lanes x) { return (lanes)((flags)x & INT64_MAX); }
INLINE int any(flags where)
{
    int64_t found = 0;
    for (int l = 0; l < LANES; l++) found |= where[l];
    return found != 0;
}

/* exp(x) - 1: 2^k·(exp(r) - 1) + 2^k - 1 with |r| at most half of ln 2, and its Taylor series to the 13th power. */
INLINE lanes exp_less_1(lanes x)
{
    static const double taylor[] = {
        1.0 / 6227020800.0, 1.0 / 479001600.0, 1.0 / 39916800.0, 1.0 / 3628800.0, 1.0 / 362880.0, 1.0 / 40320.0,
        1.0 / 5040.0, 1.0 / 720.0, 1.0 / 120.0, 1.0 / 24.0, 1.0 / 6.0, 0.5,
    };
    x = choose(x > 700.0, all(700.0), choose(x < -700.0, all(-700.0), x));
    lanes shifted = x * 1.44269504088896340736 + 0x1.8p52; /* rounds to a whole number in the low bits */
    lanes whole = shifted - 0x1.8p52;
    lanes rest = x - whole * 0x1.62e42feep-1 - whole * 0x1.a39ef35793c76p-33; /* ln 2 in two parts */
    lanes series = all(taylor[0]);
    for (int k = 1; k < 12; k++) series = series * rest + taylor[k];
    series = rest + rest * rest * series;
    lanes scale = (lanes)(((flags)shifted << 52) + 0x3ff0000000000000);
    return scale * series + (scale - 1.0);
}

INLINE lanes tanh_of(lanes x)
{
    x = choose(x > 20.0, all(20.0), choose(x < -20.0, all(-20.0), x));
    lanes grown = exp_less_1(2.0 * x);
    return grown / (grown + 2.0);
}

INLINE void gather(lanes *to, const double *from, const int64_t *rows, int64_t count)
{
    for (int64_t i = 0; i < count; i++)
        for (int l = 0; l < LANES; l++) to[i][l] = from[rows[l] * count + i];
}

INLINE void scatter(double *to, const lanes *from, int64_t row, int lane, int64_t count)
{
    for (int64_t i = 0; i < count; i++) to[row * count + i] = from[i][lane];
}

/* What a group of rows needs in every step. */
typedef struct {
    lanes shared[(MOST_PORTS + MOST_OUTPUTS) * MOST_PORTS], from_rail[MOST_PORTS + MOST_OUTPUTS];
    lanes constant[MOST_PORTS + MOST_OUTPUTS];
    lanes ohm[MOST_INJECTORS], offset_v[MOST_INJECTORS], swing_v[MOST_INJECTORS], centre_a[MOST_INJECTORS];
    lanes width_a[MOST_INJECTORS], magnet[MAGNETS][MOST_INJECTORS], live[MOST_OUTPUTS];
    lanes linkage[MOST_INJECTORS], position[MOST_INJECTORS], speed[MOST_INJECTORS], driver[MOST_INJECTORS];
    lanes over[MOST_OUTPUTS], rail, supply_v, source_ohm, reservoir_f;
    lanes before[MOST_PORTS]; /* voltage across each port's inertia at the end of the last step */
    lanes amperes[MOST_INJECTORS], pull[MOST_INJECTORS], fed[MOST_OUTPUTS];
} Group;

/* Solve (diagonal - shared)·change = left: LDLᵀ, row by row (Golub and Van Loan, section 4.1), as the ports' impedance
   is symmetric by reciprocity. */
INLINE void solve(const lanes *shared, const lanes *diagonal, const lanes *left, lanes *change, int ports)
{
    lanes lower[MOST_PORTS * MOST_PORTS], inverse[MOST_PORTS], scaled[MOST_PORTS];
    for (int i = 0; i < ports; i++) {
        lanes pivot = diagonal[i] - shared[i * ports + i], value = left[i];
        for (int j = 0; j < i; j++) {
            lanes sum = -shared[i * ports + j];
            for (int k = 0; k < j; k++) sum -= scaled[k] * lower[j * MOST_PORTS + k];
            scaled[j] = sum;
        }
        for (int j = 0; j < i; j++) {
            lanes factor = scaled[j] * inverse[j];
            pivot -= scaled[j] * factor;
            value -= factor * change[j];
            lower[i * MOST_PORTS + j] = factor;
        }
        inverse[i] = 1.0 / pivot;
        change[i] = value;
    }
    for (int i = ports - 1; i >= 0; i--) {
        lanes value = change[i] * inverse[i];
        for (int j = i + 1; j < ports; j++) value -= lower[j * MOST_PORTS + i] * change[j];
        change[i] = value;
    }
}

/* One part of a step: by implicit Euler right after a switch (share 1), else by the trapezoidal rule (share ½). */
INLINE void part_of_step(const Phase *phase, Group *g, double part_s, double share)
{
    const int half = (int)phase->injectors, ports = 2 * half, outputs = (int)phase->outputs;
    const double turned = (1.0 - share) / share, steep_power = (double)((1 << phase->doublings) + 1);
    const int chord = phase->check != 0;
    lanes current[MOST_PORTS], left[MOST_PORTS], inertia[MOST_PORTS], diagonal[MOST_PORTS], change[MOST_PORTS];
    lanes slope[MOST_INJECTORS], bend[MOST_INJECTORS], away[MOST_INJECTORS], curve[MOST_INJECTORS];

    for (int n = 0; n < half; n++) {
        lanes core = g->linkage[n] / g->magnet[TURNS][n];
        lanes gap = g->magnet[GAP_SCALE][n] / (g->magnet[FULL_GAP_M][n] - g->position[n]);
        lanes air = 1.0 / (gap + g->magnet[LEAKAGE_H][n]);
        lanes rise = core / g->magnet[SATURATION_WB][n];
        for (int64_t k = 0; k < phase->doublings; k++) rise = rise * rise;
        lanes iron = g->magnet[IRON_PER_H][n] * rise, whole = air + g->magnet[IRON_PER_H][n];
        g->amperes[n] = core * (whole + iron) / g->magnet[TURNS][n];
        slope[n] = (whole + steep_power * iron) / g->magnet[TURNS_SQUARED][n];
        lanes by_motion = air * gap;
        by_motion = by_motion * by_motion * core / g->magnet[MOTION_SCALE][n];
        g->pull[n] = -0.5 * g->linkage[n] * by_motion;

        lanes aside = g->position[n] - g->magnet[HALF_LIFT_M][n];
        lanes depth = size_of(aside) - g->magnet[HALF_LIFT_M][n];
        lanes touch = 0.5 + 0.5 * tanh_of(depth / g->magnet[STOP_WIDTH_M][n]);
        lanes sign = choose(aside > 0.0, all(1.0), choose(aside < 0.0, all(-1.0), all(0.0)));
        lanes push = g->pull[n] - g->magnet[PRELOAD_N][n] - g->magnet[SPRING][n] * g->position[n]
                     - sign * g->magnet[STOP][n] * depth * touch;
        lanes loss = g->magnet[VISCOUS][n] + g->magnet[STOP_DAMPING][n] * touch;
        lanes gone = -exp_less_1(-part_s / g->magnet[MASS_KG][n] * loss);
        g->speed[n] += gone * (push / loss - g->speed[n]);
        lanes moved = part_s * g->speed[n];
        g->position[n] += moved;
        current[n] = g->amperes[n] + by_motion * moved;
        current[half + n] = g->driver[n];

        away[n] = g->driver[n] - g->centre_a[n];
        lanes widths = away[n] / g->width_a[n];
        curve[n] = tanh_of(widths);
        lanes steep = 1.0 - curve[n] * curve[n];
        if (chord) steep = choose((size_of(widths) < CHORD_WIDTHS) & (widths != 0.0), curve[n] / widths, steep);
        bend[n] = g->ohm[n] + g->swing_v[n] * steep / g->width_a[n];
        inertia[n] = 1.0 / (slope[n] * (share * part_s));
        inertia[half + n] = all(phase->choke_h / (share * part_s));
        diagonal[n] = inertia[n];
        diagonal[half + n] = inertia[half + n] + bend[n];
    }
    for (int i = 0; i < ports + outputs; i++) {
        lanes sum = all(0.0);
        for (int j = 0; j < ports; j++) sum += g->shared[i * ports + j] * current[j];
        sum += g->from_rail[i] * g->rail + g->constant[i];
        if (i < ports) left[i] = sum + turned * g->before[i];
        else g->fed[i - ports] = sum;
    }
    for (int n = 0; n < half; n++)
        left[half + n] -= g->ohm[n] * g->driver[n] + g->offset_v[n] + g->swing_v[n] * curve[n];
    solve(g->shared, diagonal, left, change, ports);
    if (chord) {
        /* an output with no coil behind it would step over its clamp's bend and back again for ever */
        flags found = (flags){};
        for (int n = 0; n < half; n++) {
            lanes after = g->driver[n] + change[half + n];
            flags across = (g->driver[n] * after < 0.0) & (bend[n] < STEEP_OHM);
            flags middle = away[n] == 0.0;
            lanes slant = choose(middle, all(TANH_1), curve[n]) / choose(middle, g->width_a[n], away[n]);
            diagonal[half + n] += choose(across, g->ohm[n] + g->swing_v[n] * slant - bend[n], all(0.0));
            found |= across;
        }
        if (any(found)) solve(g->shared, diagonal, left, change, ports);
    }
    for (int i = 0; i < ports; i++) g->before[i] = change[i] * inertia[i] - turned * g->before[i];
    lanes drawn = all(0.0);
    for (int n = 0; n < half; n++) {
        g->linkage[n] += change[n] / slope[n];
        g->driver[n] += change[half + n];
    }
    if (!chord)
        for (int f = 0; f < outputs; f++) drawn += g->fed[f];
    g->rail += part_s / g->reservoir_f * ((g->supply_v - g->rail) / g->source_ohm - drawn);
}

INLINE void begin(const Phase *phase, Group *g, const int64_t *rows)
{
    const int64_t half = phase->injectors, ports = 2 * half, all_seen = ports + phase->outputs;
    gather(g->shared, phase->shared, rows, all_seen * ports);
    gather(g->from_rail, phase->from_rail, rows, all_seen);
    gather(g->constant, phase->constant, rows, all_seen);
    gather(g->ohm, phase->law_ohm, rows, half);
    gather(g->offset_v, phase->law_offset_v, rows, half);
    gather(g->swing_v, phase->law_swing_v, rows, half);
    gather(g->centre_a, phase->law_centre_a, rows, half);
    gather(g->width_a, phase->law_width_a, rows, half);
    for (int k = 0; k < MAGNETS; k++) gather(g->magnet[k], phase->magnets + k * phase->rows * half, rows, half);
    gather(g->live, phase->live, rows, phase->outputs);
    gather(g->linkage, phase->linkage, rows, half);
    gather(g->position, phase->position, rows, half);
    gather(g->speed, phase->speed, rows, half);
    gather(g->driver, phase->driver, rows, half);
    gather(g->over, phase->over, rows, phase->outputs);
    gather(&g->rail, phase->rail, rows, 1);
    gather(&g->supply_v, phase->supply_v, rows, 1);
    gather(&g->source_ohm, phase->source_ohm, rows, 1);
    gather(&g->reservoir_f, phase->reservoir_f, rows, 1);
}

INLINE void end(const Phase *phase, const Group *g, int64_t row, int lane)
{
    scatter(phase->linkage, g->linkage, row, lane, phase->injectors);
    scatter(phase->position, g->position, row, lane, phase->injectors);
    scatter(phase->speed, g->speed, row, lane, phase->injectors);
    scatter(phase->driver, g->driver, row, lane, phase->injectors);
    scatter(phase->over, g->over, row, lane, phase->outputs);
    scatter(phase->rail, &g->rail, row, lane, 1);
}

/* Each coil's current is small, or has not changed for two looks, and no plate moves. */
static int at_rest(const Phase *phase, int64_t column, int64_t step)
{
    const int64_t stride = phase->columns * phase->injectors, base = column * phase->injectors;
    const int64_t earlier = step - 2 * phase->check < 0 ? 0 : step - 2 * phase->check;
    for (int64_t n = 0; n < phase->injectors; n++) {
        double now_a = phase->coil_a[step * stride + base + n];
        double change_a = now_a - phase->coil_a[earlier * stride + base + n];
        double way_m = phase->position_m[step * stride + base + n] - phase->position_m[(step - 1) * stride + base + n];
        now_a = now_a < 0.0 ? -now_a : now_a;
        change_a = change_a < 0.0 ? -change_a : change_a;
        way_m = way_m < 0.0 ? -way_m : way_m;
        if (!(now_a < phase->rest_a || change_a < phase->rest_change_a)) return 0;
        if (!(way_m / phase->step_s < phase->rest_speed_m_s)) return 0;
    }
    return 1;
}

FOR_EACH_PROCESSOR
static void advance_group(const Phase *phase, int64_t first_row)
{
    const int64_t half = phase->injectors, outputs = phase->outputs;
    Group group, *g = &group;
    int64_t rows[LANES];
    int running[LANES], left = 0;
    for (int l = 0; l < LANES; l++) {
        running[l] = first_row + l < phase->rows;
        left += running[l];
        rows[l] = running[l] ? first_row + l : first_row;
    }
    begin(phase, g, rows);
    for (int64_t step = phase->first; step < phase->last && left; step++) {
        const int switched = step == phase->first || (phase->check && (step - phase->first) % phase->check == 0);
        lanes speed_before[MOST_INJECTORS];
        memcpy(speed_before, g->speed, sizeof speed_before);
        for (int l = 0; l < LANES; l++) {
            if (!running[l]) continue;
            const int64_t at = step * phase->columns + phase->column[rows[l]];
            scatter(phase->linkage_wb, g->linkage, at, l, half);
            scatter(phase->position_m, g->position, at, l, half);
            scatter(phase->return_a, g->driver, at, l, half);
            phase->rail_v[at] = g->rail[l];
        }
        if (switched) {
            memset(g->before, 0, sizeof g->before);
            for (int64_t part = 0; part < phase->parts; part++) {
                part_of_step(phase, g, phase->step_s / (double)phase->parts, 1.0);
                if (part == 0)
                    for (int l = 0; l < LANES; l++)
                        if (running[l])
                            scatter(phase->coil_a, g->amperes, step * phase->columns + phase->column[rows[l]], l, half);
            }
        } else {
            part_of_step(phase, g, phase->step_s, 0.5);
        }
        flags trips = (flags){};
        if (!phase->check)
            for (int64_t f = 0; f < outputs; f++) {
                lanes above = (g->fed[f] - phase->trip_a) / phase->trip_width_a;
                g->over[f] += phase->step_s * (0.5 + 0.5 * tanh_of(above));
                trips |= (g->over[f] > phase->trip_at_s) & (g->live[f] > 0.0);
            }
        for (int l = 0; l < LANES; l++) {
            if (!running[l]) continue;
            const int64_t at = step * phase->columns + phase->column[rows[l]];
            if (!switched) scatter(phase->coil_a, g->amperes, at, l, half);
            scatter(phase->force_n, g->pull, at, l, half);
            scatter(phase->feed_a, g->fed, at, l, outputs);
            for (int64_t n = 0; n < half; n++)
                phase->acceleration_m_s2[at * half + n] = (g->speed[n][l] - speed_before[n][l]) / phase->step_s;
            const int look = phase->check && ((step + 1 - phase->first) % phase->check == 0 || step + 1 == phase->last);
            if (trips[l] || (look && at_rest(phase, phase->column[rows[l]], step))) {
                phase->ended[rows[l]] = step + 1;
                end(phase, g, rows[l], l);
                running[l] = 0;
                left--;
            }
        }
    }
    for (int l = 0; l < LANES; l++)
        if (running[l]) end(phase, g, rows[l], l);
}

const char *source_hash(void) { return SOURCE_HASH; }

void advance(const Phase *phase)
{
    for (int64_t row = 0; row < phase->rows; row += LANES) advance_group(phase, row);
}
