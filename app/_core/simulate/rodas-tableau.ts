/**
 * Coefficients of RODAS, a stiffly stable Rosenbrock method of order 4(3) with six stages.
 * Source: Hairer and Wanner, Solving Ordinary Differential Equations II, 2nd ed. 1996, code RODAS (METH = 1);
 * the figures read in several public transcriptions of that code. Checked: tests/core/simulate/rodas.test.ts measures order 4.
 */
export const GAMMA = 0.25;

/** Time of each stage, as a part of the step. */
export const ALPHA: readonly number[] = [0, 0.386, 0.21, 0.63, 1, 1];

/** Weight of the explicit time slope in each stage. */
export const D: readonly number[] = [0.25, -0.1043, 0.1035, -0.03620000000000023, 0, 0];

/** Argument of stage i: y + Σ A[i][j]·u[j]. */
export const A: readonly (readonly number[])[] = [
  [],
  [1.544],
  [0.9466785280815826, 0.2557011698983284],
  [3.314825187068521, 2.896124015972201, 0.9986419139977817],
  [1.221224509226641, 6.019134481288629, 12.53708332932087, -0.687886036105895],
  [1.221224509226641, 6.019134481288629, 12.53708332932087, -0.687886036105895, 1],
];

/** Right-hand side of stage i: f + Σ C[i][j]·u[j]/h. */
export const C: readonly (readonly number[])[] = [
  [],
  [-5.6688],
  [-2.430093356833875, -0.2063599157091915],
  [-0.1073529058151375, -9.594562251023355, -20.47028614809616],
  [7.496443313967647, -10.24680431464352, -33.99990352819905, 11.7089089320616],
  [8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136, -6.058818238834054],
];
