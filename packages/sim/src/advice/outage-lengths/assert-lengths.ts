/** Lengths of outages that a caller hands in, held to the schema's own rules before any outage is simulated. */
import { wordFault } from '../../scenario/findings.ts';
import { schemaFindings } from '../../scenario/schema-findings.ts';
import { outageLengths, type OutageLengthsSpec } from '../../scenario/schema-outage-lengths.ts';

/** @throws RangeError that names every key that cannot be used */
export function assertOutageLengths(lengths: OutageLengthsSpec): void {
  const result = outageLengths.safeParse(lengths);
  if (result.success) return;
  const value = { outageLengths: lengths };
  const document = { file: 'lengths', value, lineOf: () => 1 };
  const findings = schemaFindings(result.error.issues, document, value, ['outageLengths']);
  throw new RangeError(findings.map((finding) => `${finding.path}: ${wordFault(finding)}`).join('\n'));
}
