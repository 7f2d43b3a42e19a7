/** The shipped tables a household chooses from; they come with the page. */
import {
  applianceRows,
  readNormals,
  readTypicalAppliances,
  type NormalsPlace,
  type TypicalAppliances,
} from '@rideout/sim';

export interface TypicalChoice {
  readonly id: string;
  readonly title: string;
  /** Fed from both legs. */
  readonly is240V: boolean;
  readonly runningW: number;
}

export interface HouseTables {
  /** Rows of data/appliances.csv as a scenario would write them. */
  readonly typical: TypicalAppliances;
  readonly choices: readonly TypicalChoice[];
  /** Places of data/normals.csv. */
  readonly places: ReadonlyMap<string, NormalsPlace>;
}

/** @param appliancesCsv text of data/appliances.csv @param normalsCsv text of data/normals.csv */
export function houseTables(appliancesCsv: string, normalsCsv: string): HouseTables {
  return {
    typical: readTypicalAppliances(appliancesCsv),
    choices: applianceRows(appliancesCsv).map((row) => ({
      id: row['id']!,
      title: row['title']!,
      is240V: row['volts'] === '240',
      runningW: Number(row['runningW']),
    })),
    places: readNormals(normalsCsv),
  };
}
