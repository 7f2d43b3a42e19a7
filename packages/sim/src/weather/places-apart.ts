/** How far apart two places are, where both are known. */
import { acosDeg, cosDeg, sinDeg } from '../sky/angles.ts';

export interface Place {
  readonly latitudeDeg?: number | undefined;
  readonly longitudeDeg?: number | undefined;
}

/** Weather changes over less than this where there are mountains or a coast; common practice, no source. */
const FAR_AWAY_KM = 150;
const KM_PER_DEGREE = 111.2;

/** Whole kilometres between places so far apart that one's weather may not be the other's; undefined when they are not. */
export function farAwayKm(a: Place, b: Place): number | undefined {
  const km = Math.round(distanceKm(a, b));
  return km > FAR_AWAY_KM ? km : undefined;
}

/** Along the Earth's surface; 0 when either place is not known. */
function distanceKm(a: Place, b: Place): number {
  const [fromDeg, toDeg] = [a.latitudeDeg, b.latitudeDeg];
  if (
    fromDeg === undefined ||
    toDeg === undefined ||
    a.longitudeDeg === undefined ||
    b.longitudeDeg === undefined
  )
    return 0;
  const apart = cosDeg(a.longitudeDeg - b.longitudeDeg);
  return KM_PER_DEGREE * acosDeg(sinDeg(fromDeg) * sinDeg(toDeg) + cosDeg(fromDeg) * cosDeg(toDeg) * apart);
}
