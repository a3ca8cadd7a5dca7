/** What is wrong with a matrix that is to be the resistances or inductances of coupled windings: it must be square,
 *  symmetric and must not give out more than it takes in, whatever currents flow. Undefined if nothing is. */
export function passiveMatrix(rows: readonly (readonly number[])[], count: number): string | undefined {
  if (rows.length !== count || rows.some((row) => row.length !== count))
    return `needs ${count} rows of ${count} numbers, one for each winding`;
  const largest = Math.max(...rows.flat().map(Math.abs));
  const lopsided = rows.some((row, i) => row.some((ohm, j) => Math.abs(ohm - (rows[j]?.[i] ?? 0)) > 1e-9 * largest));
  if (lopsided) return 'is not symmetric: what one winding does to another is what the other does to it';
  return hasNegative(rows, 1e-9 * largest) ? 'couples its windings more tightly than is possible' : undefined;
}

/** Whether some currents make the quadratic form negative: by elimination, a pivot below zero. */
function hasNegative(rows: readonly (readonly number[])[], allowed: number): boolean {
  const left = rows.map((row) => [...row]);
  for (const [at, row] of left.entries()) {
    const pivot = row[at] ?? 0;
    if (pivot < -allowed) return true;
    for (const below of left.slice(at + 1)) {
      const beside = below[at] ?? 0;
      if (pivot <= allowed) {
        if (Math.abs(beside) > Math.sqrt(allowed * Math.max(1, Math.abs(beside)))) return true;
        continue;
      }
      for (let column = at; column < below.length; column += 1)
        below[column] = (below[column] ?? 0) - (beside / pivot) * (row[column] ?? 0);
    }
  }
  return false;
}
