import type { OutputOptions } from './output.ts';

/** What every verb that runs studies is asked with. */
export interface StudyVerbOptions extends OutputOptions {
  readonly draws: number;
  readonly seed: string;
  readonly workers: number;
  readonly out?: string;
  readonly weather?: string;
  readonly months?: number[];
}
