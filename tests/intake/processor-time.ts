/** Seconds of work since the process began. Unlike a clock it does not run while other programs have the processor. */
export const processorSeconds = (): number => process.cpuUsage().user / 1e6;
