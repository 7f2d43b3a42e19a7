/** The weather of one draw: what both weather sources produce and everything downstream reads. */

/** One value per minute from the outage's start. Instants are the middle of the minute. */
export interface WeatherDraw {
  readonly minutes: number;
  /** Global horizontal irradiance, W/m²; 0 when the sun is down. */
  readonly ghiWm2: Float32Array;
  /** Diffuse horizontal irradiance, W/m²; 0 ≤ DHI ≤ GHI. */
  readonly dhiWm2: Float32Array;
  /** Outdoor dry-bulb, °C. */
  readonly dryBulbC: Float32Array;
  /** Wind speed, m/s. */
  readonly windMs: Float32Array;
  /** 1 while snow hides the panels, else 0. */
  readonly snowOnPanels: Uint8Array;
}

/** An empty draw of the given length, to be filled again and again. */
export function createWeatherDraw(minutes: number): WeatherDraw {
  return {
    minutes,
    ghiWm2: new Float32Array(minutes),
    dhiWm2: new Float32Array(minutes),
    dryBulbC: new Float32Array(minutes),
    windMs: new Float32Array(minutes),
    snowOnPanels: new Uint8Array(minutes),
  };
}
