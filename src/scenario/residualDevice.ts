/** Region of a residual-current device: it trips when it operates and stays so until it is reset by hand. */
export function residualDeviceRegion(device: string) {
  const isThisDevice = { type: 'isThisDevice', params: { device } } as const;
  return {
    initial: 'closed',
    states: {
      closed: { on: { 'device.operated': { guard: isThisDevice, target: 'tripped' } } },
      tripped: { on: { 'handle.closed': { guard: isThisDevice, target: 'closed' } } },
    },
  } as const;
}
