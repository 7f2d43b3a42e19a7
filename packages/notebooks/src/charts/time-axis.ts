/** The unit of a time axis: days, or hours where all of it is over in less than two days. */
export interface TimeAxis {
  readonly word: 'Days' | 'Hours';
  /** Units in a day: multiply days by this. */
  readonly perDay: 1 | 24;
}

export function timeAxis(lastDay: number): TimeAxis {
  return lastDay < 2 ? { word: 'Hours', perDay: 24 } : { word: 'Days', perDay: 1 };
}
