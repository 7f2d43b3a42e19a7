/** Temperatures around the appliances and banks. MODEL.md §Usage, U11. */

/** °C, one value per minute. */
export interface Ambient {
  readonly indoors: Float32Array;
  readonly outdoors: Float32Array;
  readonly garage: Float32Array;
}

const INDOOR_SHARE = 1 / (24 * 60); // a minute: rooms follow the weather over about a day; common practice, no source
const GARAGE_SHARE = 1 / (6 * 60); // an unheated garage within a quarter of a day; common practice, no source

/** @param outdoors the weather's own array, read again at every filling */
export function createAmbient(outdoors: Float32Array): Ambient {
  return {
    indoors: new Float32Array(outdoors.length),
    outdoors,
    garage: new Float32Array(outdoors.length),
  };
}

/**
 * Rooms start at `indoorC` when the grid goes and drift towards `indoorC + follows × (outdoors - indoorC)` with a lag
 * of a day; a garage starts halfway between rooms and outdoors and stays halfway, smoothed over a quarter of a day.
 */
export function fillAmbient(
  { indoors, outdoors, garage }: Ambient,
  indoorC: number,
  followsFraction: number,
): void {
  let room = indoorC;
  let shed = (indoorC + outdoors[0]!) / 2;
  for (let m = 0; m < indoors.length; m++) {
    const out = outdoors[m]!;
    room += (indoorC + followsFraction * (out - indoorC) - room) * INDOOR_SHARE;
    shed += ((room + out) / 2 - shed) * GARAGE_SHARE;
    indoors[m] = room;
    garage[m] = shed;
  }
}

export function placeC(ambient: Ambient, place: 'indoors' | 'outdoors' | 'garage'): Float32Array {
  return ambient[place];
}
