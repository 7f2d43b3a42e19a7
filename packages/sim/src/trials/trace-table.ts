/** A trace as a table: a row a minute, a column for everything an auditor asks after. */
import { table, type ColumnTable } from 'arquero';
import type { DrawTrace } from './trace-draw.ts';

/** `2026-01-15 18:07`, the minute's local civil time. */
export function localTimes({
  firstLocalDay,
  localMinuteOfDay,
  localDay,
}: Pick<DrawTrace, 'firstLocalDay' | 'localMinuteOfDay' | 'localDay'>): string[] {
  return Array.from(localMinuteOfDay, (minute, m) => {
    const date = new Date((firstLocalDay + localDay[m]!) * 86_400_000).toISOString().slice(0, 10);
    return `${date} ${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
  });
}

const two = (n: number) => String(n).padStart(2, '0');

/** Units in the column names; `unit.<id>.…`, `source.<kind>.…`, `circuit.<id>.…`; `events` joins the minute's events in words. */
export function traceTable(trace: DrawTrace): ColumnTable {
  const events = new Array<string>(trace.minutes).fill('');
  for (const { minute, text } of trace.events)
    events[minute] = events[minute] === '' ? text : `${events[minute]}; ${text}`;
  const columns: [string, ArrayLike<unknown>][] = [
    ['minute', Array.from({ length: trace.minutes }, (_, m) => m)],
    ['localTime', localTimes(trace)],
    ['ghiWm2', trace.ghiWm2],
    ['dryBulbC', trace.dryBulbC],
  ];
  for (const { id, ...unit } of trace.units) {
    for (const [name, values] of Object.entries(unit)) columns.push([`unit.${id}.${name}`, values]);
  }
  for (const { id, ...source } of trace.sources) {
    for (const [name, values] of Object.entries(source)) columns.push([`source.${id}.${name}`, values]);
  }
  columns.push(['neutralA', trace.neutralA]);
  for (const { id, wantedW, servedW, allowed, temperatureC } of trace.circuits) {
    columns.push(
      [`circuit.${id}.wantedW`, wantedW],
      [`circuit.${id}.servedW`, servedW],
      [`circuit.${id}.allowed`, allowed],
    );
    if (temperatureC !== undefined) columns.push([`circuit.${id}.temperatureC`, temperatureC]);
  }
  columns.push(['events', events]);
  return table(columns);
}
