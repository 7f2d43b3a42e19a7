/** @rideout/sim/node: files and worker threads. */
export { dataFile, readDataFile } from './node/data-folder.ts';
export { loadScenario, type LoadedScenario, type LoadOptions } from './node/load-scenario.ts';
export { runStudy, type RunOptions, type StudyRun } from './node/run-study.ts';
export { askPool, StudyInterrupted } from './node/ask-pool.ts';
export { askDrawsPool } from './node/ask-draws-pool.ts';
export { openPool, type Handout, type Pool, type Shard } from './node/shard-pool.ts';
export { assertCanWrite } from './node/can-write.ts';
export { writeWhole, WriteError, type FileToWrite } from './node/write-whole.ts';
