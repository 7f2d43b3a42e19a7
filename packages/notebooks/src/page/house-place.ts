/** Where the house is, what weather it meets, and when the outage comes. */
import { html } from '../elements.ts';
import { pressButton, type Choice, type HouseFields } from './house-fields.ts';
import { fileButton } from './house-files-given.ts';
import type { HouseTables } from './house-tables.ts';
import { monthsText } from './months-text.ts';

export function placePart(fields: HouseFields, tables: HouseTables): HTMLElement {
  const { draft } = fields;
  return html`<div class="house-grid">
    ${fields.text(['title'], { label: 'Name of the household', wide: true })} ${weatherField(fields, tables)}
    ${fields.text(['site', 'place'], { label: 'Place, in your words' })}
    ${fields.number(['site', 'latitudeDeg'], { label: 'Latitude', unit: '° north' })}
    ${fields.number(['site', 'longitudeDeg'], { label: 'Longitude', unit: '° east', hint: 'West is negative.' })}
    ${fields.number(['site', 'elevationM'], { label: 'Height above sea', unit: 'm' })}
    ${fields.text(['site', 'timeZone'], { label: 'Time zone', list: 'house-zones', hint: zoneHint(draft.spec.site.timeZone, placeOf(fields, tables)) })}
    ${fields.degrees(['site', 'indoorC'], { label: 'Room temperature' })} ${zoneList()}
  </div>`;
}

export function outagePart(fields: HouseFields): HTMLElement {
  const { draft } = fields;
  const fixed = draft.spec.outage.startLocal !== undefined;
  const change = () => {
    draft.set(['outage', 'months'], fixed ? [1] : undefined);
    draft.set(['outage', 'startLocal'], fixed ? undefined : '2026-01-15T18:00', 'shape');
  };
  const months = Array.from({ length: 12 }, (_, i) => ({
    value: i + 1,
    label: monthsText([i + 1]).slice(0, 3),
  }));
  return html`<div class="house-grid">
    <div class="wide">
      ${
        fixed
          ? fields.moment(['outage', 'startLocal'], { label: 'Begins', hint: 'By the clock of the house.' })
          : fields.ticks(['outage', 'months'], 'Begins at any minute of', months)
      }
      ${pressButton(fixed ? 'Any minute of chosen months instead' : 'A fixed date and time instead', change)}
    </div>
    ${fields.number(['outage', 'horizonDays'], { label: 'Longest outage looked at', unit: 'days' })}
    ${fields.tick(['outage', 'stormLed'], { label: 'The storm that took the grid is still overhead', hint: 'The first day is then a dull one.' })}
  </div>`;
}

const OWN_MONTHS = ' own';
const OWN_YEAR = ' year';

function weatherField(fields: HouseFields, tables: HouseTables): HTMLElement {
  const { draft } = fields;
  const { normals, monthly, yearFile } = draft.spec.weather;
  const places: Choice[] = [...tables.places.values()].map(({ id, name }) => ({ value: id, label: name }));
  const own: Choice[] = [
    ...(monthly ? [{ value: OWN_MONTHS, label: 'Your own monthly values' }] : []),
    ...(yearFile === undefined ? [] : [{ value: OWN_YEAR, label: `Weather year ${yearFile}` }]),
  ];
  const now = normals ?? (monthly ? OWN_MONTHS : OWN_YEAR);
  const select = html`<select id="house-weather">
    ${[...own, ...places].map(({ value, label }) => html`<option value=${value} selected=${value === now}>${label}</option>`)}
  </select>` as HTMLSelectElement;
  select.addEventListener('input', () => choosePlace(fields, tables, select.value));
  return html`<div class="house-field wide" data-path='["weather","normals"]'>
    <label for="house-weather">Weather like that of</label>${select}
    <p class="house-hint">
      Choosing a place also fills in latitude, longitude and height; set the time zone yourself.
    </p>
    ${fileButton('Use an hourly weather year instead (TMY3, EPW or plain table)', '.csv,.epw,.txt', 'year', fields)}
  </div>`;
}

function choosePlace({ draft }: HouseFields, { places }: HouseTables, id: string): void {
  const place = places.get(id);
  if (!place) return;
  for (const other of ['monthly', 'yearFile']) draft.set(['weather', other], undefined);
  draft.set(['weather', 'normals'], id);
  draft.set(['site', 'latitudeDeg'], place.latitudeDeg);
  draft.set(['site', 'longitudeDeg'], place.longitudeDeg);
  draft.set(['site', 'elevationM'], place.elevationM, 'shape');
}

function placeOf({ draft }: HouseFields, { places }: HouseTables) {
  return places.get(draft.spec.weather.normals ?? '');
}

/** Says when the clock and the weather place are hours apart: a place was changed and its zone forgotten. */
export function zoneHint(
  timeZone: string,
  place: { readonly name: string; readonly utcOffsetHours: number } | undefined,
): string {
  const hours = winterOffsetHours(timeZone);
  if (!place || hours === undefined || Math.abs(hours - place.utcOffsetHours) <= 1)
    return 'Such as America/New_York';
  const apart = Math.abs(hours - place.utcOffsetHours);
  return `Look again: this clock is ${apart} hours away from that of ${place.name}.`;
}

/** Hours ahead of UTC in January; undefined for a zone that is not known. */
function winterOffsetHours(timeZone: string): number | undefined {
  try {
    const at = new Date(Date.UTC(2026, 0, 15, 12));
    const format = new Intl.DateTimeFormat('en', {
      timeZone,
      hourCycle: 'h23',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
    });
    const part = Object.fromEntries(format.formatToParts(at).map(({ type, value }) => [type, Number(value)]));
    return (part['day']! - 15) * 24 + part['hour']! - 12 + part['minute']! / 60;
  } catch {
    return undefined;
  }
}

function zoneList(): HTMLElement {
  return html`<datalist id="house-zones">
    ${Intl.supportedValuesOf('timeZone').map((zone) => html`<option value=${zone}></option>`)}
  </datalist>`;
}
