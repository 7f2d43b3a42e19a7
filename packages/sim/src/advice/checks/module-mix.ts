/** Banks that are not alike: the weaker one decides. */
import { bankCapacityWh } from '../../power/unit-parameters.ts';
import { SHARE_SLACK } from '../../trials/quantile.ts';
import { inKWh, inPercent } from './amounts.ts';
import type { CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, type DraftFinding } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';

/** Differences below this are within what a meter tells. */
const HEALTH_FRACTION = 0.03;

export const moduleMix: CheckSubjectSpec = {
  id: 'module-mix',
  title: 'Banks that differ',
  look: ({ household: { units } }) => {
    const [a, b] = units;
    if (a === undefined || b === undefined) return joinOutcomes([]);
    const findings: DraftFinding[] = [];
    const draft = { where: `units.${b.id}.battery`, rule: CHECK_RULES.moduleMix };
    const capacities = [bankCapacityWh(a.battery), bankCapacityWh(b.battery)] as const;
    const sameModule = JSON.stringify(a.battery.module) === JSON.stringify(b.battery.module);
    if (!sameModule || a.battery.modules !== b.battery.modules)
      findings.push({
        ...draft,
        severity: 'note',
        found: `The banks differ in ${sameModule ? 'number of modules' : 'kind of module'}: ${a.id} holds ${inKWh(capacities[0])}, ${b.id} ${inKWh(capacities[1])}. The banks cannot help each other; 240 V ends with the first.`,
        numbers: [
          { what: a.id, value: capacities[0], unit: 'Wh' },
          { what: b.id, value: capacities[1], unit: 'Wh' },
        ],
        todo: 'Put the loads that matter on the leg of the larger bank. Never join modules of different kinds in one bank without the maker’s word.',
      });
    const apart = Math.abs(a.battery.healthFraction - b.battery.healthFraction);
    if (apart >= HEALTH_FRACTION - SHARE_SLACK)
      findings.push({
        ...draft,
        where: `units.${b.id}.battery.healthFraction`,
        severity: 'note',
        found: `${a.id}’s modules are at ${inPercent(a.battery.healthFraction)} of their nameplate, ${b.id}’s at ${inPercent(b.battery.healthFraction)}: the weaker bank ends first.`,
        numbers: [
          { what: a.id, value: a.battery.healthFraction * 100, unit: '%' },
          { what: b.id, value: b.battery.healthFraction * 100, unit: '%' },
        ],
        todo: 'Measure both with a full discharge when the grid is up; put the longer-lived loads on the better one.',
      });
    return joinOutcomes([looked(...findings)]);
  },
};
