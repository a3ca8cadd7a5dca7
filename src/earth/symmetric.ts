/** Solves A·X = B for a symmetric positive definite A, n×n row by row (overwritten by its Cholesky factor); each column of
 *  `right` is overwritten by its solution.
 *  @throws RangeError if A is not positive definite */
export function solveSymmetric(a: Float64Array, n: number, right: readonly Float64Array[]): void {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= a[i * n + k]! * a[j * n + k]!;
      if (j < i) a[i * n + j] = sum / a[j * n + j]!;
      else if (sum > 0) a[i * n + i] = Math.sqrt(sum);
      else throw new RangeError('The wires of an electrode are too thick for their length or lie in one another');
    }
  }
  for (const x of right) {
    for (let i = 0; i < n; i++) {
      let sum = x[i]!;
      for (let k = 0; k < i; k++) sum -= a[i * n + k]! * x[k]!;
      x[i] = sum / a[i * n + i]!;
    }
    for (let i = n - 1; i >= 0; i--) {
      let sum = x[i]!;
      for (let k = i + 1; k < n; k++) sum -= a[k * n + i]! * x[k]!;
      x[i] = sum / a[i * n + i]!;
    }
  }
}

/** Whether a symmetric matrix of resistances takes power whatever currents flow: positive definite. */
export function isPassive(resistance_ohm: readonly (readonly number[])[]): boolean {
  try {
    solveSymmetric(Float64Array.from(resistance_ohm.flat()), resistance_ohm.length, []);
    return true;
  } catch (refused) {
    if (refused instanceof RangeError) return false;
    throw refused;
  }
}
