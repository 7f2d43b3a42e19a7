import { scenarioCautions } from '../advice/engine-caution.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { say, signsFor, terminalLook, type OutputOptions } from './output.ts';
import { paragraph } from './render-lines.ts';

/** What must be said where an engine is to run, under an answer; nothing where none is. */
export function sayCautions(scenario: Scenario, options: OutputOptions): void {
  const { width } = terminalLook(options);
  for (const caution of scenarioCautions(scenario))
    say(signsFor(`\n${paragraph(caution, width).join('\n')}`, options));
}
