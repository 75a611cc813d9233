/** A clock of the time that this process has had of the processor, s since it was made: others on the machine hardly count in it. */
export function processorClock(): () => number {
  const from = process.cpuUsage();
  return () => {
    const { user, system } = process.cpuUsage(from);
    return 1e-6 * (user + system);
  };
}
