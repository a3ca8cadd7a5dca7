/* Native KLU on one matrix: reads it from standard input, refactors and solves again and again, prints the time of one
 * round in nanoseconds and the solution.
 * cc -O3 -march=native klu.c -lklu -lamd -lbtf -lcolamd -lsuitesparseconfig -o klu
 * Input: size, entries, repeats; size+1 column starts; entries row numbers; entries "re im"; size "re im" right-hand side. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <suitesparse/klu.h>
#include <time.h>

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return now.tv_sec + 1e-9 * now.tv_nsec;
}

static int run(int size, int *starts, int *rows, double *values, double *b, double *x, int repeats, klu_symbolic *symbolic,
               klu_numeric *numeric, klu_common *common)
{
    for (int k = 0; k < repeats; k++) {
        memcpy(x, b, 2 * sizeof(double) * size);
        if (!klu_z_refactor(starts, rows, values, symbolic, numeric, common)) return 0;
        if (!klu_z_solve(symbolic, numeric, size, 1, x, common)) return 0;
    }
    return 1;
}

int main(void)
{
    int size, entries, repeats;
    if (scanf("%d %d %d", &size, &entries, &repeats) != 3) return 2;
    int *starts = malloc(sizeof(int) * (size + 1));
    int *rows = malloc(sizeof(int) * entries);
    double *values = malloc(2 * sizeof(double) * entries);
    double *b = malloc(2 * sizeof(double) * size);
    double *x = malloc(2 * sizeof(double) * size);
    for (int k = 0; k <= size; k++)
        if (scanf("%d", starts + k) != 1) return 2;
    for (int k = 0; k < entries; k++)
        if (scanf("%d", rows + k) != 1) return 2;
    for (int k = 0; k < 2 * entries; k++)
        if (scanf("%lf", values + k) != 1) return 2;
    for (int k = 0; k < 2 * size; k++)
        if (scanf("%lf", b + k) != 1) return 2;

    klu_common common;
    klu_defaults(&common);
    klu_symbolic *symbolic = klu_analyze(size, starts, rows, &common);
    klu_numeric *numeric = symbolic ? klu_z_factor(starts, rows, values, symbolic, &common) : NULL;
    if (!numeric) return 3;
    if (!run(size, starts, rows, values, b, x, repeats / 4, symbolic, numeric, &common)) return 4;
    double start = seconds();
    if (!run(size, starts, rows, values, b, x, repeats, symbolic, numeric, &common)) return 4;
    printf("%.3f\n", (seconds() - start) / repeats * 1e9);
    for (int k = 0; k < size; k++) printf("%.17g %.17g\n", x[2 * k], x[2 * k + 1]);
    return 0;
}
