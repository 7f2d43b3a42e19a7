/** The shipped tables, put into the page while it is built. */
import appliancesCsv from 'rideout-data:appliances.csv?raw';
import normalsCsv from 'rideout-data:normals.csv?raw';
import { houseTables, type HouseTables } from './house-tables.ts';

export function pageTables(): HouseTables {
  return houseTables(appliancesCsv, normalsCsv);
}
