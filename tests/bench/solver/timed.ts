/** Microseconds of processor time a call takes, after a warm-up of a quarter as many. */
export function timed(call: () => unknown, repeats: number): number {
  for (let k = 0; k < repeats / 4; k++) call();
  const start = process.cpuUsage();
  for (let k = 0; k < repeats; k++) call();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / repeats;
}
