/** Region of a breaker: it trips when it operates and stays so until its handle is closed by hand. */
export function breakerRegion(device: string) {
  const isThisDevice = { type: 'isThisDevice', params: { device } } as const;
  return {
    initial: 'closed',
    states: {
      closed: { on: { 'device.operated': { guard: isThisDevice, target: 'tripped' } } },
      tripped: { on: { 'handle.closed': { guard: isThisDevice, target: 'closed' } } },
    },
  } as const;
}
