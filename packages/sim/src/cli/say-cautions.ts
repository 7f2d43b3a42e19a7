import { scenarioCautions } from '../advice/engine-caution.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { say, terminalLook, type OutputOptions } from './output.ts';
import { paragraph } from './render-lines.ts';
import { plainSigns } from './render-style.ts';

/** What must be said where an engine is to run, under an answer; nothing where none is. */
export function sayCautions(scenario: Scenario, options: OutputOptions): void {
  const { width, ascii } = terminalLook(options);
  for (const caution of scenarioCautions(scenario)) {
    const text = `\n${paragraph(caution, width).join('\n')}`;
    say(ascii === true ? plainSigns(text) : text);
  }
}
