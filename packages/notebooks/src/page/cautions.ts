/** The cautions that go with every answer about running a house on batteries. Local code decides. */
import { html } from '../elements.ts';

/** Usual cautions of the trade and of public safety agencies; common practice, no single source. */
export const CAUTIONS: readonly string[] = [
  'Have a licensed electrician do the wiring. Local code and your utility decide what is allowed; this page does not.',
  'Feed the house only through listed transfer equipment or a listed interlock. Never backfeed the panel through an outlet: it can kill a line worker and burn the house down.',
  'Run generators outdoors, well away from doors and windows, and have working carbon monoxide alarms. Exhaust kills within minutes.',
  'Do not stake a life-supporting device on a simulation. Ask its supplier and your doctor for a backup plan, tell your utility, and know where you would go.',
  'This is arithmetic on assumptions: real weather, wiring, batteries and people differ. Watch your own battery reading and leave a margin.',
];

export function cautions(): HTMLElement {
  return html`<aside class="cautions" aria-labelledby="cautions-title">
    <h2 id="cautions-title">Before you rely on this</h2>
    <ul>
      ${CAUTIONS.map((text) => html`<li>${text}</li>`)}
    </ul>
  </aside>`;
}
