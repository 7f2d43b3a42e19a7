/** The cautions that go with every answer about running a house on batteries. Local code decides. */
import { bridgeCautions, GENERATOR_CAUTION, type HouseholdSpec } from '@rideout/sim';
import { html } from '../elements.ts';

const GENERATORS =
  'Run generators outdoors, well away from doors and windows, and have working carbon monoxide alarms. Exhaust kills within minutes.';

const BRIDGES =
  'A single 120\u00a0V source bridged to both legs can overload a neutral that circuits share, and no breaker opens for it. Ask a licensed electrician before you bridge.';

/** Usual cautions of the trade and of public safety agencies; common practice, no single source. */
export const CAUTIONS: readonly string[] = [
  'Have a licensed electrician do the wiring. Local code and your utility decide what is allowed; this page does not.',
  'Feed the house only through listed transfer equipment or a listed interlock. Never backfeed the panel through an outlet: it can kill a line worker and burn the house down.',
  BRIDGES,
  GENERATORS,
  'Batteries have limits of temperature and current. Follow their instructions, and do not charge them colder than they allow.',
  'Do not stake a life-supporting device on a simulation. Ask its supplier and your doctor for a backup plan, tell your utility, and know where you would go.',
  'This is arithmetic on assumptions: real weather, wiring, batteries and people differ. Watch your own battery reading and leave a margin.',
];

/**
 * Those for one household: the one about bridges as it concerns it, the one about generators unless it is said whole in
 * what stands beside them.
 */
export function cautionsFor(
  household: Pick<HouseholdSpec, 'units' | 'circuits'>,
  beside: readonly string[],
): readonly string[] {
  const bridge = bridgeCautions(household);
  return CAUTIONS.flatMap((text) => {
    if (text === BRIDGES && bridge.length > 0) return bridge;
    return text === GENERATORS && beside.includes(GENERATOR_CAUTION) ? [] : [text];
  });
}

export function cautions(): HTMLElement {
  return html`<aside class="cautions" aria-labelledby="cautions-title">
    <h2 id="cautions-title">Before you rely on this</h2>
    <ul>
      ${CAUTIONS.map((text) => html`<li>${text}</li>`)}
    </ul>
  </aside>`;
}
