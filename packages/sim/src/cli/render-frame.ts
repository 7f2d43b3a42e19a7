/** The frame that every answer stands in: title above, caution and provenance below, no line too long. */
import { provenanceStamp } from '../trials/provenance-stamp.ts';
import type { Provenance } from '../trials/study-summary.ts';
import { paragraph } from './render-lines.ts';
import { overridesNote } from './render-overrides.ts';
import { plainSigns, styleFor, type Style, type TerminalLook } from './render-style.ts';

export interface FramedAnswer {
  readonly provenance: Provenance;
  /** Under the scenario's title: what it is about. */
  readonly about: readonly string[];
  readonly headline: readonly string[];
  readonly body: (style: Style) => readonly string[];
  readonly caution: string;
}

/** @returns lines ended by line feeds */
export function renderFramed(answer: FramedAnswer, look: TerminalLook): string {
  const style = styleFor(look);
  const prose = (texts: readonly string[]) => texts.flatMap((text) => paragraph(text, look.width));
  const { provenance } = answer;
  const asInFile = { ...provenance, askedWith: undefined }; // that is said in a sentence of its own
  const lines = [
    ...prose([provenance.scenarioTitle]).map(style.heading),
    ...prose(answer.about),
    '',
    ...prose(answer.headline).map(style.strong),
    '',
    ...answer.body(style),
    '',
    ...prose([answer.caution]),
    '',
    ...prose([
      `To repeat these figures: ${provenanceStamp(asInFile)}; weather ${provenance.weatherName}.`,
    ]).map(style.quiet),
    ...prose(overridesNote(look)).map(style.quiet),
  ];
  const text = `${lines.join('\n')}\n`.replaceAll('\u00a0', ' ');
  return look.ascii ? plainSigns(text) : text;
}
