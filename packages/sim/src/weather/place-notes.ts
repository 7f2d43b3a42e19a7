/** Whether a site, its clock and its weather are of one place. */
import { standardOffsetHours } from '../clock/standard-offset.ts';
import { farAwayKm, type Place } from './places-apart.ts';

interface Site extends Place {
  readonly longitudeDeg: number;
  readonly timeZone: string;
}

/** Clocks in use lie at most some 3½ hours off the sun (the far west of China, with the clock of its east). */
const MOST_OFF_THE_SUN_HOURS = 4;
const DEGREES_PER_HOUR = 15;

/** What a person should look at twice, in sentences. @param normals the place whose monthly normals are the weather */
export function placeNotes(site: Site, normals?: Place & { readonly id: string }): string[] {
  const offHours = hoursOffTheSun(site);
  const notes: string[] = [];
  if (Math.abs(offHours) > MOST_OFF_THE_SUN_HOURS)
    notes.push(
      `site: the sun at longitudeDeg ${site.longitudeDeg} is ${Math.abs(offHours).toFixed(0)} hours off the clock of ${site.timeZone}; is the sign of longitudeDeg right? East is positive.`,
    );
  const awayKm = normals === undefined ? undefined : farAwayKm(site, normals);
  if (awayKm !== undefined)
    notes.push(
      `weather.normals: ${normals!.id} is ${awayKm} km from the site; is it the right place, and are latitudeDeg and longitudeDeg right?`,
    );
  return notes;
}

/** Standard time less the time of the mean sun, −12 to 12. */
function hoursOffTheSun({ timeZone, longitudeDeg }: Site): number {
  const apart = standardOffsetHours(timeZone) - longitudeDeg / DEGREES_PER_HOUR;
  return apart - 24 * Math.round(apart / 24);
}
