/** What the keys of wires and sites cannot tell alone. */
import type { Report } from './cross-check-report.ts';
import { meantHint } from './nearest.ts';
import type { CheckedScenario } from './schema.ts';

/** The site's extremes. Reports through the caller's `report` in the manner of `crossCheck`. */
export function checkRecords({ site }: Pick<CheckedScenario, 'site'>, report: Report): void {
  if (site.recordLowC !== undefined && site.recordHighC !== undefined && site.recordLowC >= site.recordHighC)
    report(['site', 'recordHighC'], `a temperature above recordLowC, ${site.recordLowC}`);
}

/** Circuits that share a neutral; reports likewise. */
export function checkNeutrals({ circuits }: Pick<CheckedScenario, 'circuits'>, report: Report): void {
  const ids = circuits.map((c) => c.id);
  circuits.forEach(({ id, leg, sharedNeutralWith: other }, c) => {
    if (other === undefined) return;
    const path = ['circuits', c, 'sharedNeutralWith'];
    const partner = circuits.find((p) => p.id === other);
    if (other === id) report(path, 'the id of the other circuit');
    else if (partner === undefined) report(path, 'the id of a circuit', meantHint(other, ids));
    else if (leg === 'both' || partner.leg === 'both')
      report(path, 'a pair of 120 V circuits: a circuit on both legs has no neutral to share');
  });
}
