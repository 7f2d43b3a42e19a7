/**
 * Processor milliseconds that this process has had, its helper threads (compiling, collecting) included: on a shared
 * machine the only clock that tells what work costs.
 */
export function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
