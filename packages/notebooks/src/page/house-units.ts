/** The units: inverter, battery modules, panels. */
import { html } from '../elements.ts';
import type { ScenarioSpec } from '@rideout/sim';
import { freshId, type HouseDraft } from './house-draft.ts';
import { withoutSecondUnit } from './house-removals.ts';
import { pressButton, type HouseFields } from './house-fields.ts';

type Unit = ScenarioSpec['units'][number];

const LEGS = [
  { value: 'L1', label: 'L1' },
  { value: 'L2', label: 'L2' },
];
const BOTH = { value: 'both', label: 'both, without 240 V' };
/** NEC 710.15(C); README, cautions. */
const BRIDGED = {
  hint: 'One 120 V unit joined to both legs: 240 V circuits get nothing, and a neutral that circuits share can be overloaded. Have a licensed electrician find and part such circuits before you bridge.',
  wide: true,
};
const PLACES = ['indoors', 'garage', 'outdoors'].map((value) => ({ value, label: value }));

export function unitsPart(fields: HouseFields): HTMLElement {
  const { draft } = fields;
  const { units } = draft.spec;
  const pair = units.length === 2;
  return html`<div>
    ${units.map((unit, u) => unitSet(fields, unit, u))}
    <div class="house-add">
      ${
        pair
          ? [
              pressButton('Make the second unit like the first', () => likeTheFirst(draft)),
              pressButton('Take the second unit away', () => takeSecondAway(draft)),
            ]
          : pressButton('Add a second unit, for the other leg and 240 V', () => addSecond(draft))
      }
    </div>
    ${draft.note ? html`<p class="house-moved" role="status">${draft.note}</p>` : ''}
    ${pair ? fields.tick(['pair', 'stopsTogether'], { label: 'One unit stopping takes the other down with it' }) : ''}
  </div>`;
}

function unitSet(fields: HouseFields, unit: Unit, u: number): HTMLElement {
  const at = ['units', u] as const;
  const battery = [...at, 'battery'] as const;
  const module = [...battery, 'module'] as const;
  const inverter = [...at, 'inverter'] as const;
  const { draft } = fields;
  return html`<fieldset class="house-set">
    <legend>Unit “${unit.id}” on ${unit.leg === 'both' ? 'both legs' : unit.leg}</legend>
    <div class="house-grid">
      ${fields.choice([...at, 'leg'], { label: 'Feeds leg', ...(unit.leg === 'both' ? BRIDGED : {}) }, draft.spec.units.length === 1 ? [...LEGS, BOTH] : LEGS, true)}
      ${fields.number([...inverter, 'continuousW'], { label: 'Continuous', unit: 'W' })}
      ${fields.number([...inverter, 'surgeW'], { label: 'Surge, for seconds', unit: 'W' })}
      ${fields.number([...inverter, 'idleW'], { label: 'Eats when idle', unit: 'W' })}
      ${fields.number([...battery, 'modules'], { label: 'Battery modules' })}
      ${fields.number([...module, 'capacityWh'], { label: 'A module holds', unit: 'Wh' })}
      ${fields.number([...module, 'maxChargeW'], { label: 'A module takes', unit: 'W' })}
      ${fields.number([...module, 'maxDischargeW'], { label: 'A module gives', unit: 'W' })}
    </div>
    <details data-about=${`unit ${unit.id}`}>
      <summary>More about this unit</summary>
      <div class="house-grid">
        ${fields.percent([...battery, 'reserveFraction'], { label: 'Kept for outages while the grid is up' })}
        ${fields.percent([...battery, 'startFraction'], { label: 'Charge when the outage starts', hint: 'Empty: anywhere between that reserve and full.' })}
        ${fields.percent([...battery, 'cutOffFraction'], { label: 'Stops itself at' })}
        ${fields.percent([...battery, 'restartFraction'], { label: 'Comes back at' })}
        ${fields.percent([...battery, 'healthFraction'], { label: 'Left of the nameplate capacity' })}
        ${fields.choice([...battery, 'place'], { label: 'Modules stand' }, PLACES)}
        ${fields.number([...inverter, 'standbyW'], { label: 'Eats while off or asleep', unit: 'W' })}
        ${fields.percent([...inverter, 'lossPerW'], { label: 'Lost of what it delivers' })}
        ${fields.number([...inverter, 'overloadMinutes'], { label: 'Bears overload for', unit: 'min' })}
        ${fields.number([...inverter, 'resetsItselfAfterMinutes'], { label: 'Resets itself after a trip', unit: 'min', hint: 'Empty: a person must reset it.' })}
      </div>
    </details>
    ${panels(fields, unit, u)}
  </fieldset>`;
}

function panels(fields: HouseFields, { solar }: Unit, u: number): HTMLElement {
  const { draft } = fields;
  const at = ['units', u, 'solar'] as const;
  if (!solar) {
    const some = { inputLimitW: 2000, arrays: [{ peakW: 2000, tiltDeg: 30, azimuthDeg: 180 }] };
    return pressButton('Add panels to this unit', () => draft.set(at, some, 'shape'));
  }
  const add = () => draft.add([...at, 'arrays'], { peakW: 1000, tiltDeg: 30, azimuthDeg: 180 });
  const remove = (a: number) =>
    solar.arrays.length > 1 ? draft.remove([...at, 'arrays', a]) : draft.set(at, undefined, 'shape');
  return html`<div>
    <div class="house-grid">
      ${fields.number([...at, 'inputLimitW'], { label: 'Solar input limit', unit: 'W' })}
    </div>
    ${solar.arrays.map(
      (_, a) =>
        html`<div class="house-grid">
          ${fields.number([...at, 'arrays', a, 'peakW'], { label: 'Panels, nameplate', unit: 'W' })}
          ${fields.number([...at, 'arrays', a, 'tiltDeg'], { label: 'Tilt', unit: '°' })}
          ${fields.number([...at, 'arrays', a, 'azimuthDeg'], { label: 'Facing', unit: '°', hint: '180 is south.' })}
          ${pressButton('Take away', () => remove(a), `panels ${a + 1}`)}
        </div>`,
    )}
    ${pressButton('Add panels facing another way', add)}
  </div>`;
}

function likeTheFirst(draft: HouseDraft): void {
  const [first, second] = draft.spec.units;
  draft.set(['units', 1], { ...structuredClone(first!), id: second!.id, leg: second!.leg }, 'shape');
}

function takeSecondAway(draft: HouseDraft): void {
  const { spec, note } = withoutSecondUnit(draft.spec);
  draft.replace(spec, { at: ['units', 0], note });
}

function addSecond(draft: HouseDraft): void {
  const first = draft.spec.units[0]!;
  if (first.leg === 'both') draft.set(['units', 0, 'leg'], 'L1');
  const leg = first.leg === 'L2' ? 'L1' : 'L2';
  draft.add(['units'], { ...structuredClone(first), id: freshId('second', draft.spec.units), leg });
}
