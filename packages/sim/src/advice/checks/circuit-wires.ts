/** Each circuit's breaker against its wire. */
import { mostBreakerA } from '../../power/conductors.ts';
import type { Circuit } from '../../scenario/scenario.ts';
import { listed } from '../../trials/listed.ts';
import { inA, inAwg } from './amounts.ts';
import type { CheckSubjectSpec } from './check-context.ts';
import { joinOutcomes, looked, unknown, type CheckOutcome } from './check-report.ts';
import { CHECK_RULES } from './check-rules.ts';

export const circuitWires: CheckSubjectSpec = {
  id: 'circuit-wires',
  title: 'Breakers against the wires behind them',
  look: ({ household: { circuits } }) => {
    const untold = circuits
      .filter((c) => c.wireAwg === undefined || c.breakerA === undefined)
      .map((c) => c.id);
    return joinOutcomes([
      ...circuits.map(lookAt),
      untold.length === 0
        ? {}
        : unknown(
            'circuits',
            `wire or breaker not given for ${listed(untold)}`,
            'circuits.*.wireAwg',
            'circuits.*.breakerA',
          ),
    ]);
  },
};

function lookAt({ id, title, wireAwg, breakerA, terminalC = 60 }: Circuit): Partial<CheckOutcome> {
  if (wireAwg === undefined || breakerA === undefined) return {};
  const most = mostBreakerA(wireAwg, terminalC);
  if (most !== undefined && breakerA <= most) return looked();
  const name = title ?? id;
  const found =
    most === undefined
      ? `${name}: ${inAwg(wireAwg)} is no size for a circuit’s fixed wire; it stands behind a ${inA(breakerA)} breaker.`
      : `${name}: a ${inA(breakerA)} breaker stands before a wire of ${inAwg(wireAwg)}, which may have ${inA(most)} at most: the wire can overheat before it opens.`;
  return looked({
    severity: 'mend',
    where: `circuits.${id}.breakerA`,
    found,
    numbers: [
      { what: 'breaker', value: breakerA, unit: 'A' },
      { what: 'largest breaker for the wire', value: most ?? 0, unit: 'A' },
      { what: 'terminals', value: terminalC, unit: '°C' },
    ],
    todo: 'Have an electrician fit the smaller breaker, or trace and replace the wire.',
    rule: CHECK_RULES.wireBreaker,
  });
}
