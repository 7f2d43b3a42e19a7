/** The same study with other figures of its units or of its site, in the same buffers: compiled in microseconds. */
import type { SiteSpec, UnitSpec } from '../scenario/schema.ts';
import { withUnits } from '../step/household.ts';
import type { Study } from './study.ts';

export interface Variation {
  /**
   * The unit with other figures. Id, leg and the planes of its panels stay: what hangs on them was made ready before.
   */
  readonly unit: (unit: UnitSpec) => UnitSpec;
  readonly site: (site: SiteSpec) => SiteSpec;
}

/** Every alternative of the study varied alike. The scenario hash stays that of the scenario as written. */
export function varyStudy(study: Study, { unit, site }: Variation): Study {
  return {
    ...study,
    scenario: { ...study.scenario, site: site(study.scenario.site) },
    compiled: study.compiled.map((a) => ({
      ...a,
      household: withUnits(a.household, a.household.units.map(unit)),
    })),
  };
}
