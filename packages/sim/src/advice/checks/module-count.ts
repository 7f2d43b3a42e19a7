/** Too few modules for what the unit gives and takes, or more than its panels can fill. */
import { bankCapacityWh } from '../../power/unit-parameters.ts';
import type { UnitSpec } from '../../scenario/schema.ts';
import { inKWh, inW, ofDraws, tenths } from './amounts.ts';
import type { CheckContext, CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, type CheckOutcome } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';
import { canRefill } from './can-refill.ts';

/** Days of mean sun to fill a bank beyond which more modules stay empty in a long outage. */
const LONG_FILL_DAYS = 3;

export const moduleCount: CheckSubjectSpec = {
  id: 'module-count',
  title: 'Modules against what the unit gives and takes',
  look: (context) =>
    joinOutcomes(
      context.household.units.flatMap((unit, u) => [
        looked(),
        discharge(context, unit, u),
        charge(unit),
        fill(context, unit, u),
      ]),
    ),
};

/** Watts that the modules must deliver for `loadW` at the panel: MODEL.md §6.1. */
function neededW({ inverter }: UnitSpec, loadW: number): number {
  return loadW + inverter.idleW + loadW * (inverter.lossPerW + inverter.lossPerW2 * loadW);
}

function discharge({ observed }: CheckContext, unit: UnitSpec, u: number): Partial<CheckOutcome> {
  const { battery, inverter } = unit;
  const seen = observed.units[u]!;
  const limitW = battery.modules * battery.module.maxDischargeW;
  const fullW = neededW(unit, inverter.continuousW);
  const surgeW = neededW(unit, inverter.surgeW);
  const numbers = [
    { what: 'modules deliver', value: limitW, unit: 'W' },
    { what: 'asked at the continuous rating', value: fullW, unit: 'W' },
    { what: 'asked at the surge rating, for seconds', value: surgeW, unit: 'W' },
    { what: 'worst minute watched', value: seen.worstDischargeW, unit: 'W' },
    { what: 'outages watched with that minute above it', value: seen.dischargeDraws, unit: '' },
  ];
  const draft = { where: `units.${unit.id}.battery.modules`, numbers, rule: CHECK_RULES.modules };
  const deliver = `${unit.id}’s modules deliver ${inW(limitW)}`;
  if (seen.dischargeDraws > 0)
    return {
      findings: [
        {
          ...draft,
          severity: 'watch',
          found: `${deliver}; the worst minute watched asked them for ${inW(seen.worstDischargeW)}: they would have stopped it in ${ofDraws(seen.dischargeDraws, observed.draws)}.`,
          todo: 'Another module, or hold the load to what they deliver.',
        },
      ],
    };
  if (fullW > limitW)
    return {
      findings: [
        {
          ...draft,
          severity: 'note',
          found: `${deliver}; its continuous rating asks them for ${inW(fullW)}. The worst minute watched asked for ${inW(seen.worstDischargeW)}.`,
          todo: 'Plan with what the modules deliver, not with the inverter’s rating; another module lifts it.',
        },
      ],
    };
  if (surgeW <= limitW) return {};
  return {
    findings: [
      {
        ...draft,
        severity: 'note',
        found: `A start at ${unit.id}’s surge rating asks its modules for ${inW(surgeW)} for seconds; they deliver ${inW(limitW)} for longer. The scenario does not say what they bear for seconds.`,
        todo: 'Look for the peak discharge in the modules’ data sheet: below the surge rating, starts can stop the unit.',
      },
    ],
  };
}

/** Watts that can arrive at once against what the modules take. */
function charge({ id, battery, solar, charger }: UnitSpec): Partial<CheckOutcome> {
  const limitW = battery.modules * battery.module.maxChargeW;
  const panelsW = solar === undefined ? 0 : Math.min(solar.inputLimitW, peakW({ solar }));
  const chargerW = charger === undefined ? 0 : charger.maxW * charger.efficiency; // into the bank, not off the wall
  const sources = [
    { name: 'its panels', watts: panelsW, what: 'panels, at most' },
    { name: 'its charger', watts: chargerW, what: 'charger' },
  ];
  return joinOutcomes(
    sources
      .filter(({ watts }) => watts > limitW)
      .map(({ name, watts, what }) => ({
        findings: [
          {
            severity: 'note' as const,
            where: `units.${id}.battery.modules`,
            found: `${id}’s modules take ${inW(limitW)}; ${name} can bring ${inW(watts)}.`,
            numbers: [
              { what: 'modules take', value: limitW, unit: 'W' },
              { what, value: watts, unit: 'W' },
            ],
            todo: 'More modules take more of it; until then run large loads while it is bright.',
            rule: CHECK_RULES.modules,
          },
        ],
      })),
  );
}

function peakW({ solar }: Pick<UnitSpec, 'solar'>): number {
  return (solar?.arrays ?? []).reduce((sum, a) => sum + a.peakW, 0);
}

function fill({ observed, household }: CheckContext, unit: UnitSpec, u: number): Partial<CheckOutcome> {
  const { id, battery } = unit;
  const capacityWh = bankCapacityWh(battery);
  const sunWh = observed.units[u]!.solarAvailableWhPerDay - observed.units[u]!.solarClippedWhPerDay;
  const loadWh = observed.units[u]!.meanLoadW * 24;
  const draft = {
    where: `units.${id}.battery.modules`,
    numbers: [
      { what: 'bank', value: capacityWh, unit: 'Wh' },
      { what: 'panels, mean day watched', value: sunWh, unit: 'Wh' },
      { what: 'everything on, mean day watched', value: loadWh, unit: 'Wh' },
    ],
    rule: CHECK_RULES.modules,
  };
  if (!canRefill(unit, household))
    return {
      findings: [
        {
          ...draft,
          severity: 'note',
          found: `Nothing refills ${id}: what its bank holds at the start is all there is (${inKWh(capacityWh)} when full).`,
          todo: 'Keep it full while the grid is up, and plan the switching off from the first hour.',
        },
      ],
    };
  const days = capacityWh / sunWh;
  if (sunWh < 1 || days <= LONG_FILL_DAYS) return {};
  return {
    findings: [
      {
        ...draft,
        severity: 'note',
        found: `${id}’s panels bring ${inKWh(sunWh)} on the mean day watched; its bank of ${inKWh(capacityWh)} takes ${tenths(days)} such days to fill with nothing on.`,
        todo: 'Further modules would start full once and then stay largely empty: panels first.',
      },
    ],
  };
}
