/** The name that was probably meant: the closest by letters changed, added, left out or exchanged, if close enough.
 *  @example nearest('nuetral', ['line', 'neutral']) // 'neutral' */
export function nearest(written: string, names: Iterable<string>): string | undefined {
  const meant = written.toLowerCase();
  const most = Math.min(3, Math.max(1, Math.floor(meant.length / 3)));
  let best: string | undefined;
  let least = most + 1;
  for (const name of names) {
    if (Math.abs(name.length - meant.length) >= least || name.length > 80) continue;
    const distance = lettersBetween(meant, name.toLowerCase());
    if (distance < least) [best, least] = [name, distance];
  }
  return best;
}

// Optimal string alignment: three rows are enough, as an exchange of neighbours looks two back.
function lettersBetween(a: string, b: string): number {
  let [before, last] = [
    Array.from({ length: b.length + 1 }, () => 0),
    Array.from({ length: b.length + 1 }, (_, at) => at),
  ];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let steps = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        steps = Math.min(steps, (before[j - 2] ?? 0) + 1);
      row.push(steps);
    }
    [before, last] = [last, row];
  }
  return last[b.length] ?? 0;
}
